/** Every magic number of this package, with its trade-off. Lengths in mm unless the name says otherwise. */

/** A pattern of this size in bytes is no longer a drawing; reading it would only fill the memory. */
export const MAX_FILE_BYTES = 64 * 1024 * 1024;

/** Tags within tags. Drawing programs stay below 30; deep enough for any, shallow enough for a plain recursion. */
export const MAX_DEPTH = 400;

/** Elements in the file. */
export const MAX_ELEMENTS = 500_000;

/** Elements drawn as parts of clones: a clone draws its original again, so a small file can ask for billions. */
export const MAX_CLONED = 50_000;

/** Of a DXF: blocks put in place, and elements drawn by all but the first copy of a block. Stitch holes may each be one. */
export const MAX_INSERTED = 200_000;

/** Segments of one path. A real outline has thousands; the search for crossings must stay within seconds. */
export const MAX_PATH_SEGMENTS = 200_000;

/** Segments in the whole drawing. */
export const MAX_SEGMENTS = 2_000_000;

/** Characters that internal text entities may add to the file, all uses together. */
export const MAX_ENTITY_CHARACTERS = 1_000_000;

/** An entity that names an entity that names an entity, and so on. */
export const MAX_ENTITY_DEPTH = 8;

/** Beyond 50 m no hide and no workshop reaches, and the 1 µm grid of the booleans ends. */
export const MAX_COORDINATE_MM = 50_000;

/** Ends that lie no farther apart are the same place: a drawing program's snap is coarser than this, a leather knife too. */
export const JOIN_MM = 0.1;

/** Ends that lie no farther apart are one but for rounding. */
export const EXACT_MM = 0.001;

/** Two lines are one drawn twice if no place of either is farther from the other. */
export const DUPLICATE_MM = 0.01;

/** Chords for containing and crossing, as coarse as the rings that are derived later; the curves themselves are kept. */
export const FLATTEN_MM = 0.05;

/** Chords for telling a circle. */
export const CIRCLE_CHORD_MM = 0.02;

/** An outline of less area is a slip of the pen, not leather. */
export const MIN_PIECE_MM2 = 1;

/** Without a role, an inner outline below this share of the piece's area is an opening, above it a stitch line. */
export const OPENING_SHARE = 0.25;

/** Without a role, a circle within a piece up to this diameter is a punch: tubes for punching go to about 12 mm (common practice, no source). */
export const PUNCH_MAX_DIAMETER_MM = 12;

/** Without a role, only circles up to this diameter can make a row of stitch holes: belt holes are 4 mm and more (common practice, no source). */
export const STITCH_HOLE_MAX_DIAMETER_MM = 3;

/** Stitch holes lie no farther apart than this (coarse saddle stitching is 5 to 8 mm; common practice, no source). */
export const STITCH_HOLE_MAX_SPACING_MM = 15;

/** Fewer holes than this are punches. */
export const STITCH_ROW_MIN_HOLES = 4;

/** Radii of one row differ by less. */
export const STITCH_HOLE_RADIUS_MM = 0.05;

/** Of its equals, a hole is compared with so many nearest ones: a row needs two, crowded drawings have thousands. */
export const STITCH_HOLE_NEIGHBOURS = 8;

/** Steps of one row differ by at most this factor. */
export const STITCH_ROW_SPACING_RATIO = 1.35;

/** A closed curve is a circle if no place is farther off its circle than this share of its radius (or 0.02 mm). */
export const CIRCLE_SHARE = 0.01;
export const CIRCLE_MM = 0.02;

/** Without a role, an open line whose ends come this near to the cut line is a fold line. */
export const FOLD_REACH_MM = 2;

/** Without a role, a short straight line that starts on the cut line is a notch up to this length. */
export const NOTCH_MAX_MM = 8;

/** How near the cut line a notch must start. */
export const NOTCH_REACH_MM = 2;

/** A CSS inch has 96 px (CSS Values 4, section 6.2). */
export const PX_PER_INCH = 96;
export const MM_PER_INCH = 25.4;

/** Resolutions that older drawing programs wrote. */
export const OTHER_RESOLUTIONS = [72, 90] as const;

/** For the guess of a resolution: a size this near a round one counts as round. */
export const ROUND_SIZE_MM = 0.02;

/** Lines drawn dash by dash: so many dashes at least, each and each gap no longer than this. */
export const DASHES_AT_LEAST = 5;
export const DASH_MAX_LENGTH_MM = 25;
export const DASH_MAX_GAP_MM = 12;

/** No gap is wider than this times the widest before it (a gap may fall on a corner and look short). */
export const DASH_GAP_SLACK = 1.6;

/** A gap turns from its dashes by 75° at most: round a square corner it looks turned by 45° or so on either side. */
export const DASH_MAX_TURN_COS = 0.25;

/** Or it goes straight on from one of them and leaves the other, which ends on a corner, by 135° at most. */
export const DASH_STRAIGHT_COS = 0.9;
export const DASH_CORNER_COS = -0.71;

/** Lines that go on this near to straight are one; two 1 µm roundings and a hair. */
export const FLAT_RUN_MM = 0.003;

/** An edge that meets the fold square, up to what files of few decimals round by, goes straight over it. */
export const STRAIGHT_OVER_FOLD_MM = 0.01;

/** A fold edge that a text names is no shorter: rounded corners end in short chords. */
export const FOLD_EDGE_MIN_MM = 10;

/** A text of the fold speaks of the piece that it lies in, or that it stands beside within this. */
export const FOLD_TEXT_REACH_MM = 15;

/** The nearest edge is meant if the next one is farther from the text by this; nearer ones can't be told apart. */
export const FOLD_TEXT_CLEAR_MM = 5;

/** A text runs along an edge if it is turned from it by no more. */
export const FOLD_TEXT_PARALLEL_DEG = 3;

/** Layers called "38" and "40" are sizes if their largest outlines differ by less than this factor each way: sizes differ by tenths. */
export const BARE_SIZES_FACTOR = 1.4;

/** Seam and turning allowances of leather goods and sewn patterns (common practice, no source). */
export const ALLOWANCE_MIN_MM = 1.5;
export const ALLOWANCE_MAX_MM = 40;

/** An allowance is as wide everywhere up to this, on this share of the inner outline: corners may be cut. */
export const ALLOWANCE_EVEN_MM = 0.25;
export const ALLOWANCE_EVEN_SHARE = 0.9;

/** So much of the cut line goes along with the inner outline, mitred corners included: less where it has tabs of its own. */
export const ALLOWANCE_OUTER_SHARE = 0.8;

/** Outlines one in the other that look like sizes: so many, each of this share of the next larger one's area, and shaped alike. */
export const GRADED_AT_LEAST = 3;
export const GRADED_AREA_SHARE = 0.6;
export const GRADED_ASPECT_FACTOR = 1.25;

/** Loops and spikes below this are errors of an offset or a trace; no one can cut one with a knife. */
export const TINY_LOOP_MM = 0.5;

/** Outlines of more segments are left as they are: to search them finely for loops would take too long, and a crossing stays an error. */
export const MAX_LOOPED_SEGMENTS = 20_000;

/** Chords on which crossings of curves are cut: the place is exact to about as much. */
export const LOOP_CHORD_MM = 0.001;

/** Chords become an arc: so many at least, each so short and so near to its arc that nobody sees a corner. */
export const ARC_CHORDS_AT_LEAST = 8;
export const ARC_CHORD_MAX_MM = 5;
export const ARC_MAX_SAGITTA_MM = 0.09;

/** Sine of 20°: polygons of up to 18 sides stay polygons, whatever their size. */
export const ARC_CHORD_MAX_TURN_SINE = 0.342;

/** Corners of such chords lie this near to the arc: what programs allow themselves when they flatten. */
export const ARC_CHORDS_FIT_MM = 0.02;

/** Cubics become an arc if they lie this near to it, or within what the usual cubics of a circle of that radius are off. */
export const ARC_CUBIC_FIT_MM = 0.01;
export const ARC_CUBIC_FIT_SHARE = 0.0003;
export const ARC_CUBIC_FIT_MAX_MM = 0.05;

/** An arc that turns less says nothing of a circle. */
export const ARC_MIN_SWEEP_DEG = 10;

/** Graded sizes of one file, and how many lines of no size may be read with them, all sizes together: some 15 s of work. */
export const MAX_SIZES = 40;
export const MAX_SIZED_LINES = 400_000;

/** Texts of the fold that are looked at: as many as a file has pieces, and each costs a look at all corners of its piece. */
export const MAX_FOLD_TEXTS = 500;

/** Letters are about half as wide as high. */
export const LETTER_WIDTH_SHARE = 0.5;

/** Filled areas without a stroke up to this size may be letters: titles on patterns are hardly higher, pieces hardly smaller. */
export const LETTER_MAX_MM = 20;
