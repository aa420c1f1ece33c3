/** The half of pdf.js that parses files; importing it sets it up to run beside the other half, without a worker. */
declare module 'pdfjs-dist/legacy/build/pdf.worker.mjs' {
  const WorkerMessageHandler: unknown;
  export { WorkerMessageHandler };
}
