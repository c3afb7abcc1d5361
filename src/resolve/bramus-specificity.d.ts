// Types of the package's entry for calculation alone, which its export map leaves out.
declare module '@bramus/specificity/core' {
  /** Specificity of a selector as the CSS reader gives it. */
  export function calculateForAST(selector: object): {
    toObject(): { readonly a: number; readonly b: number; readonly c: number };
  };
}
