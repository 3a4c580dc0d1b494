// What checks of the course element have in common.

/** Counts, in the page, how often WebAssembly is compiled and instantiated. */
export function countInstances() {
  globalThis.wasmCalls = { compile: 0, compileStreaming: 0, instantiate: 0, instantiateStreaming: 0 };
  for (const name of Object.keys(globalThis.wasmCalls)) {
    const real = WebAssembly[name];
    WebAssembly[name] = function (...all) {
      globalThis.wasmCalls[name] += 1;
      return real.apply(this, all);
    };
  }
}

/** Resolves once every element of the page has its picture. */
export const allReady = (page) => page.evaluate(() => Promise.all([...document.querySelectorAll('downbeam-view')].map((e) => ((e.loading = 'eager'), e.ready))));
