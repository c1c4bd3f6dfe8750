// Brings the parts of the program that the first figure does without. The build writes which files each part lies in.
// What belongs to a part, when it is asked for and what the page shows meanwhile is the program's own business.

import { initSync } from "./app.js";

const PARTS = {{parts}};
/** The files that are there or on their way, by name. One that failed is not among them: it can be asked for again. */
const files = new Map();
const failed = new Set();

/** The answer of the host, past the browser's cache where an earlier one was of no use. */
async function ask(name) {
  const answer = await fetch(new URL(name, import.meta.url), failed.has(name) ? { cache: "reload" } : {});
  if (!answer.ok) throw new Error(`the answer for ${name} was ${answer.status}`);
  return answer;
}

/** Compiles a file and links it to the running program, once the files it builds on are. Not every host knows WebAssembly's type. */
async function link(name, needs) {
  const [answer] = await Promise.all([ask(name), ...needs]);
  const shared = { __wasm_split: { ...initSync(), ...{{canary}} } };
  const streams = answer.headers.get("content-type")?.startsWith("application/wasm");
  if (streams) await WebAssembly.instantiateStreaming(answer, shared);
  else await WebAssembly.instantiate(await answer.arrayBuffer(), shared);
}

/** A file, fetched once however many parts need it. */
function once(name, needs) {
  if (!files.has(name)) {
    const linked = link(name, needs);
    files.set(name, linked);
    linked.then(() => failed.delete(name), () => files.delete(name) && failed.add(name));
  }
  return files.get(name);
}

/** Brings all files of a part, then tells the program whether they are there. */
async function bring(part, callback, asked) {
  let isThere = true;
  try {
    const coming = [];
    for (const name of PARTS[part]) coming.push(once(name, [...coming]));
    await Promise.all(coming);
  } catch (fault) {
    console.warn(`The part “${part}” of Layshaft could not be loaded:`, fault);
    isThere = false;
  }
  initSync().__indirect_function_table.get(callback)(asked, isThere);
}

{{exports}}
