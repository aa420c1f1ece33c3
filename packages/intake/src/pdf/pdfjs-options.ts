/** How pdf.js is run: nothing is fetched, compiled, drawn or printed, no font of the system is looked for. */
export const PDF_OPTIONS = {
  verbosity: 0,
  isEvalSupported: false,
  useSystemFonts: false,
  disableFontFace: true,
  useWorkerFetch: false,
  useWasm: false,
  isOffscreenCanvasSupported: false,
  isImageDecoderSupported: false,
  enableXfa: false,
  disableRange: true,
  disableStream: true,
  disableAutoFetch: true,
  // In pixels: pictures have no lines, so none is ever decoded.
  maxImageSize: 0,
} as const;
