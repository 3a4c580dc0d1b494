let restComing;
// Adds the rest of the engine to the first part, which stands already: once, and again for the next who asks if it did not come.
function addRest(module_or_path) {
    if (restComing === undefined) {
        restComing = addRestOnce(module_or_path);
        restComing.catch(() => { restComing = undefined; });
    }
    return restComing;
}

async function addRestOnce(module_or_path) {
    const { instance } = await __wbg_load(await module_or_path, { ...__wbg_get_imports(), first: wasm });
    wasm = { ...wasm, ...instance.exports };
}

// The whole engine. `rest` is to the rest what `module_or_path` is to the first part.
async function init(options = {}) {
    const plain = Object.getPrototypeOf(options) === Object.prototype;
    const { module_or_path, rest = new URL('downbeam_rest.wasm', import.meta.url) } = plain ? options : { module_or_path: options };
    // Both on their way at once.
    const address = typeof rest === 'string' || rest instanceof URL || (typeof Request === 'function' && rest instanceof Request);
    const coming = restComing ?? (address ? fetch(rest) : rest);
    // Whoever waits for it hears of a failure.
    Promise.resolve(coming).catch(() => {});
    await __wbg_init(module_or_path === undefined ? undefined : { module_or_path });
    await addRest(coming);
    return wasm;
}

export { initSync, __wbg_init as initFirst, addRest, init as default };
