// A job as the text of a link: its JSON, deflated, in base64url, as the service reads it too.
import { given } from "./job.js";

/** @typedef {import("./store.js").Job} Job */

/** @param {Uint8Array<ArrayBuffer>} bytes @param {CompressionStream | DecompressionStream} through */
const piped = async (bytes, through) => new Uint8Array(await new Response(new Blob([bytes]).stream().pipeThrough(through)).arrayBuffer());

/** @param {Job} job @returns {Promise<string>} */
export async function textOf(job) {
  const bytes = await piped(new TextEncoder().encode(JSON.stringify(job)), new CompressionStream("deflate-raw"));
  const binary = Array.from(bytes, byte => String.fromCharCode(byte)).join("");
  return btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

/** @param {string} text @returns {Promise<Job | null>} Null where it is no link. */
export async function jobOf(text) {
  try {
    const binary = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
    const bytes = await piped(Uint8Array.from(binary, letter => letter.charCodeAt(0)), new DecompressionStream("deflate-raw"));
    const job = JSON.parse(new TextDecoder().decode(bytes));
    return typeof job?.panel === "object" && job.panel !== null ? given(job) : null;
  } catch {
    return null;
  }
}
