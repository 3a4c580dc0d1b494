export function initFirst(options?: { module_or_path: InitInput | Promise<InitInput> }): Promise<InitOutput>;

/**
 * Adds the rest of the engine to the first part, which must stand already. Until then only what a first picture needs may be called.
 */
export function addRest(module_or_path: Response | BufferSource | WebAssembly.Module | Promise<Response | BufferSource | WebAssembly.Module>): Promise<void>;

/**
 * Brings the whole engine. `rest` is to its second file what `module_or_path` is to the first; both are fetched beside this module when left out.
 */
export default function init(options?: { module_or_path?: InitInput | Promise<InitInput>; rest?: InitInput | Promise<InitInput> } | InitInput | Promise<InitInput>): Promise<InitOutput>;
