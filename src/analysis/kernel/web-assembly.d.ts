// The part of the WebAssembly interface that the kernel's loader uses; the compiler's own
// declarations of it come only with those of a browser.
declare namespace WebAssembly {
  interface Module {
    readonly compiled: unique symbol;
  }
  class Memory {
    constructor(pages: { readonly initial: number });
    readonly buffer: ArrayBuffer;
  }
  function validate(bytes: Uint8Array): boolean;
  function compile(bytes: Uint8Array): Promise<Module>;
  function instantiate<Exports>(
    module: Module,
    imports: { readonly env: { readonly abort: () => never; readonly memory: Memory } },
  ): Promise<{ readonly exports: Exports }>;
}
