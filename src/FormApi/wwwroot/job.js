// The job as it is typed: where its values are, how a change is put in, what is sent.

/** @typedef {import("./store.js").Job} Job */
/** @typedef {import("#contract").components["schemas"]["ChangeResult"]} Change */

/** The scenario that the page opens with: a cab corner in 1.6 mm aluminium, on a form of 2 mm steel. */
export const cabCorner = () => ({
  units: "mm",
  panel: {
    material: { id: "al-5052-h32" },
    thickness: 1.6,
    width: 820,
    leadIn: 60,
    leadOut: 220,
    curve: { type: "arc", radius: 95, sweep: 85 },
  },
  form: { material: { id: "steel-cr-cs" }, thickness: 2, foldRadius: 2, leadIn: 70, leadOut: 60 },
  brake: { length: 1250 },
  sheet: { title: "Cab corner" },
});

/** @param {string} pointer An RFC 6901 pointer. */
const stepsOf = pointer => pointer.split("/").slice(1).map(step => step.replaceAll("~1", "/").replaceAll("~0", "~"));

/**
 * @param {any} root
 * @param {string} pointer
 */
export function at(root, pointer) {
  return stepsOf(pointer).reduce((found, step) => found?.[step], root);
}

/**
 * A copy with one value put in, or taken out where it is undefined; objects on the way that are missing are made.
 * @template T
 * @param {T} root
 * @param {string} pointer
 * @param {unknown} value
 * @returns {T}
 */
export function withValue(root, pointer, value) {
  const copy = structuredClone(root);
  const steps = stepsOf(pointer);
  const last = /** @type {string} */ (steps.pop());
  /** @type {any} */
  let place = copy;
  for (const step of steps) place = place[step] ??= {};
  if (value === undefined) delete place[last];
  else place[last] = value;
  return copy;
}

// A sheet is given by its thickness or by its gauge; the one put in takes the other's place.
const rivals = { thickness: ["gauge", "gaugeSystem"], gauge: ["thickness"] };

/**
 * A job with a remedy's changes. Their pointers are those of the request as its answer shows it.
 * @param {Job} job
 * @param {Job} shown The request in the answer.
 * @param {Change[]} changes
 * @returns {Job}
 */
export function changed(job, shown, changes) {
  let next = structuredClone(job);
  for (const { pointer, value } of changes) {
    const steps = stepsOf(pointer);
    const last = /** @type {string} */ (steps.at(-1));
    const parent = pointer.slice(0, pointer.lastIndexOf("/"));
    // A curve is shown by other measures than it may have been given by, and a list has to be there to be changed.
    if (pointer.startsWith("/panel/curve/")) next = withValue(next, "/panel/curve", at(shown, "/panel/curve"));
    for (let depth = 1; depth < steps.length; depth++) {
      const above = "/" + steps.slice(0, depth).join("/");
      if (Array.isArray(at(shown, above)) && at(next, above) === undefined) next = withValue(next, above, at(shown, above));
    }
    for (const rival of rivals[/** @type {keyof typeof rivals} */ (last)] ?? []) next = withValue(next, `${parent}/${rival}`, undefined);
    next = withValue(next, pointer, value);
  }
  return next;
}

/**
 * The job behind a link: without what nobody gave.
 * @param {any} shown The request in an answer.
 * @returns {Job}
 */
export function given(shown) {
  const job = structuredClone(shown);
  for (const part of ["panel", "form", "brake"]) {
    for (const name of job[part]?.assumed ?? []) delete job[part][name];
    if (job[part]) delete job[part].assumed;
  }
  return withoutNulls(job);
}

/** @param {any} value @returns {any} */
function withoutNulls(value) {
  if (Array.isArray(value)) return value.map(withoutNulls);
  if (value === null || typeof value !== "object") return value;
  return Object.fromEntries(Object.entries(value).filter(([name, inner]) => inner !== null || name.endsWith("Radius")).map(([name, inner]) => [name, withoutNulls(inner)]));
}

/**
 * What was typed into a field: a number, nothing, or text that the service reads, such as 4 1/2.
 * @param {string} text
 * @returns {number | string | undefined}
 */
export function typed(text) {
  const bare = text.trim();
  if (bare === "") return undefined;
  return /^[-+]?(\d+\.?\d*|\.\d+)$/.test(bare) ? Number(bare) : bare;
}

/** @param {Job} job What a program, an inspection or an estimate takes of it. */
export const requestOf = job => {
  const { sheet: _, ...rest } = job;
  return rest;
};
