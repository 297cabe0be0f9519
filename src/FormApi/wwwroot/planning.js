// From the job to its plan: the picture first, then the figures; one call at a time, and only for the newest job.
import { cabCorner, changed, given, withValue } from "./job.js";
import { remember } from "./kept.js";
import { jobOf, textOf } from "./link.js";
import { call, newest } from "./service.js";
import { read, write } from "./store.js";
import { verdicts } from "./words.js";

/** @typedef {import("./store.js").Job} Job */

const ask = newest(async (/** @type {Job} */ job, isNewest) => {
  const drawn = await call("v1/forms/drawing", { body: job, accept: "image/svg+xml" });
  if (drawn.ok) write({ drawing: drawn.body, problem: null });
  else if (drawn.problem) refuse(drawn.problem);
  if (!isNewest()) return;
  if (!drawn.ok) {
    write({ busy: false });
    return;
  }
  const planned = await call("v1/forms", { body: job });
  if (planned.ok) {
    const answer = planned.body;
    write({ answer, problem: null, busy: false, said: `${verdicts[answer.verdict]}. ${answer.text}` });
    if (isNewest()) settle();
  } else {
    if (planned.problem) refuse(planned.problem);
    write({ busy: false });
  }
});

/** @param {import("./store.js").Problem} problem */
function refuse(problem) {
  write({ problem, said: [problem.detail, ...(problem.errors ?? []).map(fault => fault.text)].join(" ") });
}

/** @type {ReturnType<typeof setTimeout> | undefined} */
let settling;

// The address is the job; browsers allow it to be changed only so often.
function settle() {
  clearTimeout(settling);
  settling = setTimeout(async () => {
    const { job, answer } = read();
    const link = await textOf(job);
    if (read().job !== job) return;
    write({ link });
    if (answer) remember(job, answer, link);
    history.replaceState(null, "", addressOf(read().part));
  }, 300);
}

/** The address of a part of this job. @param {string} part */
export function addressOf(part) {
  const { link } = read();
  return `./#${part}${link ? "/" + link : ""}`;
}

/** @param {Job} job Plans another job. */
export function take(job) {
  write({ job, busy: true });
  return ask(job);
}

/**
 * Puts a value into the job and plans it.
 * @param {string} pointer
 * @param {unknown} value
 */
export const put = (pointer, value) => take(withValue(read().job, pointer, value));

/** @param {import("./job.js").Change[]} changes A remedy's changes. */
export function apply(changes) {
  const { job, answer, problem } = read();
  // A refused job has no answer that shows it otherwise than it was sent.
  return take(changed(job, problem || !answer ? job : answer.request, changes));
}

/** @param {string | null} text The text of a link; null for the example. */
export async function open(text) {
  const job = text === null ? cabCorner() : await jobOf(text);
  write({ link: text });
  if (job) return take(job);
  write({ said: "There is no job in that link." });
  return take(cabCorner());
}

/**
 * The same job in other units, as the service converts it.
 * @param {string} units
 * @returns {Promise<void>}
 */
export async function takeIn(units) {
  const { job } = read();
  const outcome = await call("page/units?units=" + units, { body: job });
  // What was changed meanwhile is converted too.
  if (outcome.ok && read().job !== job) return takeIn(units);
  if (outcome.ok) return take(given(outcome.body));
  if (outcome.problem) refuse(outcome.problem);
}
