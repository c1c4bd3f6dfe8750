// Brings the parts of the program that the first figure does without. The build writes which files each part lies in.
// What belongs to a part, when it is asked for and what the page shows meanwhile is the program's own business.

import { initSync } from "./app.js";

const PARTS = {{parts}};
/** What is there or on its way, by name: the modules of files, and pieces that are linked. What failed is not among it and can be asked for again. */
const modules = new Map();
const pieces = new Map();
const failed = new Set();
let program;

/** What is made of a name, once however many ask for it. */
function once(known, name, make) {
  if (!known.has(name)) {
    const coming = make(name);
    known.set(name, coming);
    coming.catch(() => known.delete(name));
  }
  return known.get(name);
}

/** The answer of the host, past the browser's cache where an earlier one was of no use. */
async function ask(file) {
  const answer = await fetch(new URL(file, import.meta.url), failed.has(file) ? { cache: "reload" } : {});
  if (!answer.ok) throw new Error(`the answer for ${file} was ${answer.status}`);
  return answer;
}

/** A file compiled, while it comes where the host says that it is WebAssembly: not every host knows the type. */
async function compile(file) {
  const answer = await ask(file);
  const streams = answer.headers.get("content-type")?.startsWith("application/wasm");
  return streams ? WebAssembly.compileStreaming(answer) : WebAssembly.compile(await answer.arrayBuffer());
}

/** The module of a file, or of a section of one. */
async function moduleOf(file, section) {
  const module = await once(modules, file, compile);
  return section === undefined ? module : WebAssembly.compile(WebAssembly.Module.customSections(module, section)[0]);
}

/** Links a piece, which is a file or, behind `#`, a section of one, to the running program, once those it builds on are. */
async function link(piece, needs) {
  const [file, section] = piece.split("#");
  try {
    const [module] = await Promise.all([moduleOf(file, section), needs]);
    program ??= { __wasm_split: { ...initSync(), ...{{canary}} } };
    await WebAssembly.instantiate(module, program);
    failed.delete(file);
  } catch (fault) {
    modules.delete(file);
    failed.add(file);
    throw fault;
  }
}

/** Brings all pieces of a part, then tells the program whether they are there. */
async function bring(part, callback, asked) {
  let isThere = true;
  try {
    let linked = Promise.resolve();
    for (const piece of PARTS[part]) {
      const needs = linked;
      linked = Promise.all([needs, once(pieces, piece, () => link(piece, needs))]);
    }
    await linked;
  } catch (fault) {
    console.warn(`The part “${part}” of Layshaft could not be loaded:`, fault);
    isThere = false;
  }
  initSync().__indirect_function_table.get(callback)(asked, isThere);
}

{{exports}}
