// Keeps the notebook's page for when there is no line. What is kept is of one build, page and script together; with a line the
// page on the site counts, and what is kept becomes that. script/kept.js names the build: where it is another, browsers fetch
// this worker anew.
importScripts("script/kept.js");

const { version, files } = self.meshwrightKept;
const begins = `meshwright notebook ${new URL("./", self.location).pathname} `;
const name = begins + version;
const addresses = files.map((file) => new URL(file, self.location).href);

self.addEventListener("install", (event) => {
  // All of it or nothing: half a page is kept by nobody.
  const fetched = addresses.map((address) => new Request(address, { cache: "no-cache" }));
  event.waitUntil(
    caches
      .open(name)
      .then((cache) => cache.addAll(fetched))
      .then(() => self.skipWaiting()),
  );
});

self.addEventListener("activate", (event) => {
  const drop = (one) => (one.startsWith(begins) && one !== name ? caches.delete(one) : undefined);
  event.waitUntil(
    caches
      .keys()
      .then((all) => Promise.all(all.map(drop)))
      .then(() => self.clients.claim()),
  );
});

/** From the site; where there is no line, or it does not answer, what is kept. */
async function answered(request, address) {
  const cache = await caches.open(name);
  try {
    const answer = await fetch(request, { cache: "no-cache" });
    if (answer.status < 500) return answer;
  } catch {
    // No line.
  }
  return (await cache.match(address)) ?? Response.error();
}

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = request.url.split(/[?#]/)[0].replace(/\/index\.html$/, "/");
  if (request.method === "GET" && addresses.includes(address)) event.respondWith(answered(request, address));
});
