// Keeps the page, and the answers to what was asked, for when the service is away. What it kept it marks, so that the page can say so.
const files = [
  "@files@"
];
const pageCache = "page:@address@";
const answerCache = "answers";
const mostAnswers = 300;

self.addEventListener("install", event => event.waitUntil((async () => {
  const cache = await caches.open(pageCache);
  await cache.addAll(["../", ...files.map(name => `../@address@/${name}`)]);
  await self.skipWaiting();
})()));

self.addEventListener("activate", event => event.waitUntil((async () => {
  for (const name of await caches.keys()) {
    if (name.startsWith("page:") && name !== pageCache) await caches.delete(name);
  }
  await self.clients.claim();
})()));

self.addEventListener("fetch", event => {
  const url = new URL(event.request.url);
  if (url.origin !== location.origin) return;
  const path = url.pathname.slice(new URL("../", location.href).pathname.length);
  if (path === "") event.respondWith(freshPage(event.request));
  else if (path.startsWith("page/") && event.request.method === "GET" && !path.endsWith("service-worker.js")) event.respondWith(keptFile(event.request));
  else if (path.startsWith("v1/") || path.startsWith("page/")) event.respondWith(answered(event.request));
});

async function freshPage(request) {
  try {
    return await fetch(request);
  } catch {
    return await (await caches.open(pageCache)).match("../") ?? Response.error();
  }
}

async function keptFile(request) {
  return await (await caches.open(pageCache)).match(request) ?? fetch(request);
}

// A call is named by what it asks and how it wants it; only what went well is kept.
async function answered(request) {
  const name = await nameOf(request.clone());
  const cache = await caches.open(answerCache);
  try {
    const response = await fetch(request);
    if (response.ok) await keep(cache, name, response.clone());
    return response;
  } catch {
    const kept = await cache.match(name);
    if (!kept) return new Response(null, { status: 503, headers: { "x-kept": "nothing" } });
    const headers = new Headers(kept.headers);
    headers.set("x-kept", "before");
    return new Response(kept.body, { status: kept.status, headers });
  }
}

async function nameOf(request) {
  const text = [request.method, request.url, request.headers.get("accept"), request.method === "POST" ? await request.text() : ""].join("\n");
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text)));
  return new URL("../kept/" + Array.from(hash, byte => byte.toString(16).padStart(2, "0")).join(""), location.href).href;
}

async function keep(cache, name, response) {
  await cache.put(name, response);
  const names = await cache.keys();
  for (const old of names.slice(0, Math.max(0, names.length - mostAnswers))) await cache.delete(old);
}
