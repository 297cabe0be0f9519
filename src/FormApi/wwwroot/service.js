// Calls of the service that served the page, and of nobody else.
import { read, write } from "./store.js";

/** @typedef {import("./store.js").Problem} Problem */
/** @typedef {{ ok: true, body: any, response: Response } | { ok: false, problem: Problem | null }} Outcome A null problem: nobody answered. */

const keyName = "formapi.key";

/**
 * One call. A missing key is asked for, and the call made again with it.
 * @param {string} path Relative to the page, such as v1/forms.
 * @param {{ body?: unknown, accept?: string }} [options]
 * @returns {Promise<Outcome>}
 */
export async function call(path, { body, accept = "application/json" } = {}) {
  let response;
  try {
    response = await fetch("./" + path.replace(/^\//, ""), {
      method: body === undefined ? "GET" : "POST",
      headers: {
        Accept: accept + ", application/problem+json",
        ...(body === undefined ? {} : { "Content-Type": "application/json" }),
        ...keyHeader(),
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
  } catch {
    write({ away: true });
    return { ok: false, problem: null };
  }
  if (response.status === 401) {
    await askKey();
    return call(path, body === undefined ? { accept } : { body, accept });
  }
  // The service worker marks what it kept from before.
  const away = response.headers.has("x-kept");
  if (read().away !== away) write({ away });
  const type = response.headers.get("content-type") ?? "";
  if (away && response.status === 503) return { ok: false, problem: null };
  if (!response.ok) return { ok: false, problem: type.includes("json") ? await response.json() : null };
  const text = type.includes("json") ? await response.json() : type.startsWith("image/svg") || type.startsWith("text/") ? await response.text() : await response.blob();
  return { ok: true, body: text, response };
}

/** @returns {Record<string, string>} */
function keyHeader() {
  const key = sessionStorage.getItem(keyName);
  return key ? { "X-Api-Key": key } : {};
}

/** Asks the person for a key; it is kept until the tab closes. */
function askKey() {
  const wrong = sessionStorage.getItem(keyName) !== null;
  return new Promise(done => write({
    askedKey: {
      wrong,
      done: key => {
        sessionStorage.setItem(keyName, key);
        write({ askedKey: null });
        done(undefined);
      },
    },
  }));
}

/**
 * Work of which one is under way at a time: what is asked meanwhile waits, and only the newest of it is done.
 * @template T
 * @param {(what: T, isNewest: () => boolean) => Promise<void>} work
 * @returns {(what: T) => Promise<void>}
 */
export function newest(work) {
  /** @type {{ what: T } | null} */
  let waiting = null;
  /** @type {Promise<void> | null} */
  let running = null;
  return what => {
    waiting = { what };
    running ??= (async () => {
      while (waiting) {
        const { what: next } = waiting;
        waiting = null;
        await work(next, () => waiting === null);
      }
      running = null;
    })();
    return running;
  };
}
