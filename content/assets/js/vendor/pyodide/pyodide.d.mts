/* What the planner's worker uses of it; the package's own types ask for those of Node. */
export interface Python {
  unpackArchive(archive: Uint8Array, format: "zip", options: { extractDir: string }): void;
  // biome-ignore lint/suspicious/noExplicitAny: a module of Python has whatever it has
  pyimport(name: string): any;
  readonly _module: { readonly HEAPU8: Uint8Array };
}
export function loadPyodide(options: {
  indexURL: string;
  lockFileContents: object;
  packageBaseUrl: string;
}): Promise<Python>;
