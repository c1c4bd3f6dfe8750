// Starts the program, and stands by when it cannot start or stops: the page is never blank and the job's text is never out of reach.
// The bindings and the style sheet are other files; what the program does once it runs is its own business.

const RECORD = "layshaft.job.";
const OPEN = "layshaft.open";
const at = (id) => document.getElementById(id);

/** The text of the job that lay open in this tab, or nothing where there is none or the store is blocked. */
function keptJob() {
  return new Promise((give) => {
    const none = () => give("");
    try {
      const key = RECORD + (sessionStorage.getItem(OPEN) ?? localStorage.getItem(OPEN));
      const left = localStorage.getItem(key);
      if (left !== null) return give(left);
      const database = indexedDB.open("layshaft");
      // Asked for by this file it must not come into being.
      database.onupgradeneeded = () => database.transaction.abort();
      database.onerror = none;
      database.onsuccess = () => {
        const text = database.result.transaction("texts").objectStore("texts").get(key);
        text.onsuccess = () => give(text.result ?? "");
        text.onerror = none;
      };
    } catch {
      none();
    }
  });
}

/** Shows the last resort: what happened, and the job's text to save. */
async function showCrash() {
  const crash = at("crash");
  if (!crash || !crash.hidden) return;
  const text = await keptJob();
  if (!crash.hidden) return;
  at("boot")?.remove();
  for (const other of document.body.children) if (other !== crash) other.inert = true;
  at("crash-text").value = text;
  at("crash-save").href = URL.createObjectURL(new Blob([text], { type: "application/json" }));
  for (const id of ["crash-save", "crash-label", "crash-text"]) at(id).hidden = text === "";
  at("crash-empty").hidden = text !== "";
  crash.hidden = false;
  document.documentElement.dataset.crashed = "";
  at("crash-heading").focus();
}

/** Says in the page why the program is not there. */
function sayWhy(sentence) {
  const says = at("boot-says");
  if (says) says.textContent = sentence;
}

const isTrap = (what) => what instanceof WebAssembly.RuntimeError;
addEventListener("error", (event) => isTrap(event.error) && showCrash());
addEventListener("unhandledrejection", (event) => isTrap(event.reason) && showCrash());

/** Tells the program that a newer version waits: `data-update` on the root element and an event of the same meaning. */
function announce() {
  document.documentElement.dataset.update = "waiting";
  dispatchEvent(new Event("layshaft:update"));
}

/** Waits until the program has all its parts, or asked for them in vain: until then the line is theirs. */
function whole() {
  if (document.documentElement.dataset.whole !== undefined) return Promise.resolve();
  return new Promise((done) => addEventListener("layshaft:whole", done, { once: true }));
}

/** Registers the service worker; the newer version takes over only when the program sends `layshaft:take-over`. */
async function keepOffline() {
  const here = new URL(location.href);
  if (!("serviceWorker" in navigator) || !/^https?:$/.test(here.protocol) || here.searchParams.has("dev")) return;
  const registration = await navigator.serviceWorker.register("./sw.js", { scope: "./", updateViaCache: "none" });
  const watch = (worker) =>
    worker?.addEventListener("statechange", () => worker.state === "installed" && navigator.serviceWorker.controller && announce());
  if (registration.waiting && navigator.serviceWorker.controller) announce();
  watch(registration.installing);
  registration.addEventListener("updatefound", () => watch(registration.installing));
  // The browser looks for a newer version by itself, but not while files still come. Without a network there is none.
  if (registration.active) registration.update().catch(() => {});
  addEventListener("layshaft:take-over", () => {
    navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
    registration.waiting?.postMessage({ type: "take-over" });
  });
}

const UNABLE = "Layshaft could not be loaded. Check the connection and load the page again; nothing you have kept on this device is lost.";
addEventListener("layshaft:unable", () => sayWhy(UNABLE));

/** Asks for the styles that no first screen needs, again after a while where they do not come. */
function dressFurther() {
  const more = Object.assign(document.createElement("link"), { rel: "stylesheet", href: new URL("more.css", import.meta.url) });
  more.onerror = () => {
    more.remove();
    setTimeout(dressFurther, 5000);
  };
  document.head.append(more);
}

/** Milliseconds after which a page that has only just come came by a slow line, which must not lie idle. */
const SLOW = 300;

/** Waits until what stands in the page is painted, unless the line is slow. A page out of sight is not painted. */
function painted() {
  return new Promise((done) => {
    if (performance.now() > SLOW) return done();
    new PerformanceObserver(done).observe({ type: "paint", buffered: true });
    setTimeout(done, 150);
  });
}

/** Loads the bindings and the program, which takes the opening words away. */
async function start() {
  if (typeof WebAssembly !== "object") {
    sayWhy("This browser is too old for Layshaft: it cannot run WebAssembly. Open the page in a current browser.");
    return;
  }
  try {
    const program = painted().then(() => fetch(new URL("app_bg.wasm", import.meta.url)));
    const [{ default: init }, module_or_path] = await Promise.all([import("./app.js"), program]);
    await init({ module_or_path });
    dressFurther();
  } catch (fault) {
    if (isTrap(fault)) return showCrash();
    console.warn("Layshaft could not load:", fault);
    sayWhy(UNABLE);
    return;
  }
  whole().then(keepOffline).catch((fault) => console.warn("Layshaft cannot be kept for use without a network:", fault));
}

start();
