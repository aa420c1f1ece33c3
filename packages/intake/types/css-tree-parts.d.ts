/** The parts of css-tree that the reader uses, without its large property tables. */
declare module 'css-tree/parser' {
  import type { CssNode, ParseOptions } from 'css-tree';
  const parse: (text: string, options?: ParseOptions) => CssNode;
  export { parse as default };
}

declare module 'css-tree/generator' {
  import type { CssNode } from 'css-tree';
  const generate: (node: CssNode) => string;
  export { generate as default };
}
