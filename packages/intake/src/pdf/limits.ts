/** Magic numbers of the PDF reader, each with its trade-off. Those shared by all formats are in `../limits.ts`. */

/** A tiled pattern has tens of pages, a book of patterns hundreds. */
export const MAX_PDF_PAGES = 2000;

/** Operators of all pages that are read. Sixty pages that each draw all of a large pattern have about a million. */
export const MAX_OPERATORS = 3_000_000;

/** Lines that are kept, as many as elements in an SVG. */
export const MAX_LINES_KEPT = 500_000;

/** Forms and groups drawn, each time counted: a form may draw forms, so a small file can ask for billions. */
export const MAX_FORMS_DRAWN = 50_000;

/** Forms within forms and saved graphics states; programs stay below 30 (ISO 32000-1, annex C, asks for 28). */
export const MAX_STATE_DEPTH = 400;

/** Segments before clipping: each of many pages may draw all of the pattern. Those that stay count as in every format. */
export const MAX_SEGMENTS_DRAWN = 20_000_000;

/** Comparisons of segments with corners of clip paths, all together: some seconds of work. */
export const MAX_CLIP_WORK = 200_000_000;

/** Clip paths within each other that are no upright rectangles: each line is held against all of them. */
export const MAX_CLIPS_STACKED = 100;

/** Chords of a clip path that is no upright rectangle lie this near to it, mm: well below what a knife follows. */
export const CLIP_CHORD_MM = 0.005;

/** A line this near to a clip's edge, mm, runs along it: chords and the 1 µm grid lie between. */
export const ALONG_CLIP_MM = 0.01;

/** Default user space unit: 1/72 inch (ISO 32000-1, section 8.3.2.3). */
export const MM_PER_POINT = 25.4 / 72;

/** A filled area no wider than this on average, mm, may be a line that a program wrote as its outline. */
export const THIN_FILL_MM = 1.5;

/** Such an area is this many times as long as wide. */
export const THIN_FILL_LENGTHS = 8;

/** What a stream other than a picture may inflate to, bytes: a page's drawing has some megabytes at most. */
export const MAX_STREAM_BYTES = 32 * 1024 * 1024;

/** Above this size in bytes, a stream may not unpack to more than so many times its packed size: drawings pack 3:1 to 10:1. */
export const LOOSELY_PACKED_BYTES = 4 * 1024 * 1024;
export const MAX_PACKING_RATIO = 100;

/** Values of a sampled function (ISO 32000-1, section 7.10.2): a table of ink has some thousands. */
export const MAX_FUNCTION_SAMPLES = 4_000_000;

/** In files whose letters are drawings, how often the forms that draw forms could at most be drawn, all upon each other. */
export const MAX_FORM_CHAINS = 1_000_000;

/** The same for streams that hold objects or their places, which become objects in memory, many times as large. */
export const MAX_OBJECT_STREAM_BYTES = 16 * 1024 * 1024;

/** What all such streams together may inflate to. */
export const MAX_INFLATED_BYTES = 256 * 1024 * 1024;

/** A stream of a locked file can't be looked into beforehand, so it may have so many bytes as inflate to `MAX_STREAM_BYTES` at ten times the usual 10:1. */
export const MAX_LOCKED_STREAM_BYTES = 640 * 1024;

/** Objects in the file (a viewer's own limit is 8,388,607: ISO 32000-1, annex C). */
export const MAX_OBJECTS = 1_000_000;

/** Of a path with more subpaths (letters, hatching) no outline is told as a hole of another: each is compared with all. */
export const MAX_HOLES_SUBPATHS = 3000;

/** Of pictures that are read: pixels of one (A3 at 600 px to the inch has 70 million), and the bytes that it unpacks to. */
export const MAX_PICTURE_PIXELS = 75_000_000;
export const MAX_PICTURE_BYTES = 4 * MAX_PICTURE_PIXELS;

/** Scanned pages of one file that are read, and pixels of all of them once put to `PAGE_PX_PER_MM`: some 1 GB. */
export const MAX_PICTURE_PAGES = 40;
export const MAX_ALL_PIXELS = 240_000_000;

/** Pages are kept no finer than this: 300 px to the inch tell all that card tells. */
export const PAGE_PX_PER_MM = 300 / 25.4;
