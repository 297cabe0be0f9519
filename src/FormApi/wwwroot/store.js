// What the page knows, in one place; whoever shows it is told when it changes.

/** @typedef {import("#contract").components["schemas"]["FormAnswer"]} FormAnswer */
/** @typedef {import("#contract").components["schemas"]["Problem"]} Problem */
/** @typedef {Record<string, any>} Job A form request as it was typed: a length may be text such as 4 1/2. */

/**
 * @typedef {object} State
 * @property {Job} job What is asked for.
 * @property {string | null} link The job as the text of a link.
 * @property {FormAnswer | null} answer The plan of the last job that had one.
 * @property {string | null} drawing Its sheet as SVG.
 * @property {Problem | null} problem Why the job has no plan.
 * @property {boolean} busy Whether a plan is on its way.
 * @property {boolean} away Whether the service did not answer.
 * @property {string} said What a screen reader is told.
 * @property {string} part Name of the part that is open.
 * @property {null | { wrong: boolean, done: (key: string) => void }} askedKey A key is asked for.
 * @property {null | string} dialog The dialog that is open.
 */

/** @type {State} */
let state = {
  job: {}, link: null, answer: null, drawing: null, problem: null, busy: false, away: false, said: "", part: "want", askedKey: null, dialog: null,
};

/** @type {Set<() => void>} */
const listeners = new Set();

/** @returns {State} */
export const read = () => state;

/** @param {Partial<State>} change */
export function write(change) {
  state = { ...state, ...change };
  document.documentElement.dataset["busy"] = state.busy ? "yes" : "no";
  for (const tell of listeners) tell();
}

/** @param {() => void} tell */
export function listen(tell) {
  listeners.add(tell);
  return () => { listeners.delete(tell); };
}
