// What this browser keeps for the person: brakes, sheets, rates, recent jobs, and where folding was left.

/** @typedef {{ name: string, value: any }} Named */
/** @typedef {{ title: string, text: string, link: string, units: string, fingerprint: string }} Recent */
/** @typedef {{ brakes: Named[], sheets: Named[], rates: Named[], recent: Recent[], steps: Record<string, number>, seen: Record<string, boolean> }} Kept */

const name = "formapi.kept";
const mostRecent = 20;

/** @returns {Kept} */
export function kept() {
  /** @type {Kept} */
  const nothing = { brakes: [], sheets: [], rates: [], recent: [], steps: {}, seen: {} };
  try {
    return { ...nothing, ...JSON.parse(localStorage.getItem(name) ?? "{}") };
  } catch {
    return nothing;
  }
}

/** @param {Partial<Kept>} change */
export function keep(change) {
  try {
    localStorage.setItem(name, JSON.stringify({ ...kept(), ...change }));
  } catch {
    // Full, or not allowed: the page works on without.
  }
}

/**
 * Keeps a named thing in the place of one of the same name.
 * @param {"brakes" | "sheets" | "rates"} kind
 * @param {string} called
 * @param {any} value
 */
export function keepNamed(kind, called, value) {
  keep({ [kind]: [...kept()[kind].filter(one => one.name !== called), { name: called, value }] });
}

/**
 * @param {"brakes" | "sheets" | "rates"} kind
 * @param {string} called
 */
export const forget = (kind, called) => keep({ [kind]: kept()[kind].filter(one => one.name !== called) });

/**
 * Puts a job on top of the recent ones; a job of the same title is the same job, changed.
 * @param {import("./store.js").Job} job
 * @param {import("./store.js").FormAnswer} answer
 * @param {string} link
 */
export function remember(job, answer, link) {
  const title = job["sheet"]?.title ?? "Job without a name";
  /** @type {Recent} */
  const now = { title, text: answer.text, link, units: job["units"], fingerprint: answer.fingerprint };
  keep({ recent: [now, ...kept().recent.filter(one => one.title !== title)].slice(0, mostRecent) });
}

/** Everything that is kept, as one file. */
export const exported = () => new Blob([JSON.stringify({ formapi: 1, ...kept() }, null, 2)], { type: "application/json" });

/**
 * Takes a file that was exported, in place of what is kept.
 * @param {string} text
 * @returns {boolean} Whether it was one.
 */
export function imported(text) {
  try {
    const { formapi, ...rest } = JSON.parse(text);
    if (formapi !== 1) return false;
    keep(rest);
    return true;
  } catch {
    return false;
  }
}
