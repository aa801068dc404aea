/**
 * The planner's worker: Python with the planner of this library, brought when a plan is first asked for.
 *
 * It takes surveys and gives plans and visits, as text, or the files of a pack, and reaches nothing else: it has no
 * page, and its Python sees none of the browser.
 */
import { loadPyodide } from "../vendor/pyodide/pyodide.mjs";

const CORE = new URL("../vendor/pyodide/", import.meta.url).href;
const PARTS = new URL("../../../planner.zip", import.meta.url).href;
const NOTHING_ELSE = {
  info: { abi_version: "2026_0", arch: "wasm32", platform: "emscripten_5_0_3", python: "3.14.2" },
  packages: {},
};

/** So many bytes are told of together. */
const STEP = 100_000;
const bring = self.fetch.bind(self);
let taken = 0;
let told = 0;

/** An answer whose bytes are counted as they come. @param {Response} answer */
function counted(answer) {
  const count = new TransformStream({
    transform(piece, out) {
      taken += piece.length;
      if (taken - told >= STEP) {
        told = taken;
        self.postMessage({ taken });
      }
      out.enqueue(piece);
    },
  });
  return answer.body ? new Response(answer.body.pipeThrough(count), answer) : answer;
}

/** @param {string} url */
async function brought(url) {
  const answer = await bring(url);
  if (!answer.ok) throw new Error(`${answer.status} for ${url}`);
  return counted(answer).arrayBuffer();
}

/** The core is stored packed. Some hosts say so, and then the browser has unpacked it already. @param {ArrayBuffer} stored */
function unpacked(stored) {
  const [first, second] = new Uint8Array(stored, 0, 2);
  const body = new Blob([stored]).stream();
  return first === 0x1f && second === 0x8b ? body.pipeThrough(new DecompressionStream("gzip")) : body;
}

self.fetch = async (asked, options) => {
  const url = String(asked instanceof Request ? asked.url : asked);
  if (!url.endsWith(".wasm")) return counted(await bring(asked, options));
  return new Response(unpacked(await brought(`${url}.gz`)), { headers: { "Content-Type": "application/wasm" } });
};

async function begun() {
  const parts = brought(PARTS);
  const python = await loadPyodide({
    indexURL: CORE,
    lockFileContents: /** @type {any} */ (NOTHING_ELSE),
    packageBaseUrl: CORE,
  });
  python.unpackArchive(new Uint8Array(await parts), "zip", { extractDir: "/" });
  python.pyimport("sys").path.insert(0, "/python");
  const planner = python.pyimport("latchside.in_page.planner");
  planner.library();
  return { python, planner };
}

const ready = begun();
ready.then(
  () => self.postMessage({ ready: true }),
  (error) => self.postMessage({ failed: String(error?.message ?? error) }),
);

/** @type {Record<string, (planner: any, survey: string, today: string, own: string, site: string) => unknown>} */
const makers = {
  plan: (planner, survey, today, own) => planner.planned(survey, today, own),
  visit: (planner, survey, today, own) => planner.visit_file(survey, today, own),
  pack: (planner, survey, today, own, site) => planner.pack_files(survey, today, own, site).toJs(),
};

self.addEventListener("message", async ({ data: { number, sort, survey, today, own, site } }) => {
  const { python, planner } = await ready;
  try {
    const made = makers[sort](planner, survey, today, own, site);
    self.postMessage({ number, made, memory: python._module.HEAPU8.length });
  } catch (error) {
    self.postMessage({ number, failed: String(/** @type {Error} */ (error).message) });
  }
});
