function hasFiles(event: DragEvent): boolean {
  return event.dataTransfer?.types.includes('Files') === true;
}

/**
 * Files may be dropped anywhere on the table, also beside the drawing; the drawing shows that it takes them. Gives back
 * what ends it.
 */
export function receiveFiles(drawing: HTMLElement, take: (files: readonly File[]) => void): () => void {
  const area = drawing.closest<HTMLElement>('.table') ?? drawing;
  const end = new AbortController();
  const { signal } = end;
  const show = (isTaking: boolean): void => void drawing.classList.toggle('takes-files', isTaking);
  // A sheet that lies over the table hides what would take them.
  const isFor = (event: DragEvent): boolean =>
    hasFiles(event) && (event.target as Element).closest('dialog') === null;
  area.addEventListener(
    'dragover',
    (event) => {
      if (!isFor(event)) return;
      event.preventDefault();
      show(true);
    },
    { signal },
  );
  area.addEventListener(
    'dragleave',
    ({ relatedTarget }) => {
      if (!(relatedTarget instanceof Node) || !area.contains(relatedTarget)) show(false);
    },
    { signal },
  );
  area.addEventListener(
    'drop',
    (event) => {
      show(false);
      if (!isFor(event)) return;
      event.preventDefault();
      const files = [...(event.dataTransfer?.files ?? [])];
      if (files.length > 0) take(files);
    },
    { signal },
  );
  return () => {
    end.abort();
    show(false);
  };
}

/** A file that is dropped where nothing takes it would be opened by the browser instead of the app. */
export function refuseStrayFiles(): void {
  const refuse = (event: DragEvent): void => {
    if (event.defaultPrevented || !hasFiles(event)) return;
    event.preventDefault();
    if (event.dataTransfer !== null) event.dataTransfer.dropEffect = 'none';
  };
  window.addEventListener('dragover', refuse);
  window.addEventListener('drop', refuse);
}
