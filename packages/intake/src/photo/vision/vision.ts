/**
 * What is used of the vision library (OpenCV compiled for JavaScript), by its own names. Its own types lack the marker
 * detector and are not checked here; what another part needs is added to this list.
 */
export interface Vision {
  readonly Mat: { new (): Mat; new (rows: number, columns: number, type: number): Mat };
  readonly MatVector: new () => MatVector;
  readonly Size: new (width: number, height: number) => VisionSize;
  readonly Point: new (x: number, y: number) => VisionPoint;
  readonly Rect: new (x: number, y: number, width: number, height: number) => VisionRect;
  readonly Scalar: new (a?: number, b?: number, c?: number, d?: number) => readonly number[];
  readonly CV_8UC1: number;
  readonly CV_8UC3: number;
  readonly CV_32F: number;
  readonly CV_32FC1: number;
  readonly CV_32FC2: number;
  readonly CV_64FC1: number;
  readonly COLOR_RGB2GRAY: number;
  readonly COLOR_RGB2Lab: number;
  readonly INTER_NEAREST: number;
  readonly INTER_LINEAR: number;
  readonly INTER_AREA: number;
  readonly INTER_CUBIC: number;
  readonly BORDER_CONSTANT: number;
  readonly BORDER_REPLICATE: number;
  readonly CHAIN_APPROX_NONE: number;
  readonly RETR_CCOMP: number;
  readonly MORPH_ELLIPSE: number;
  readonly MORPH_ERODE: number;
  readonly MORPH_OPEN: number;
  readonly MORPH_CLOSE: number;
  readonly DIST_L2: number;
  readonly RETR_EXTERNAL: number;
  readonly GC_BGD: number;
  readonly GC_FGD: number;
  readonly GC_PR_BGD: number;
  readonly GC_PR_FGD: number;
  readonly GC_EVAL_FREEZE_MODEL: number;
  readonly DICT_APRILTAG_36h11: number;
  readonly aruco_DetectorParameters: new () => MarkerDetectorParameters;
  readonly aruco_RefineParameters: new (
    leastRepetitionDistance: number,
    errorCorrectionRate: number,
    checkAllOrders: boolean,
  ) => MarkerRefineParameters;
  readonly aruco_ArucoDetector: new (
    dictionary: MarkerDictionary,
    parameters: MarkerDetectorParameters,
    refine: MarkerRefineParameters,
  ) => MarkerDetector;
  getPredefinedDictionary(which: number): MarkerDictionary;
  cvtColor(from: Mat, to: Mat, code: number): void;
  resize(from: Mat, to: Mat, size: VisionSize, fx?: number, fy?: number, interpolation?: number): void;
  remap(
    from: Mat,
    to: Mat,
    mapX: Mat,
    mapY: Mat,
    interpolation: number,
    border?: number,
    borderValue?: readonly number[],
  ): void;
  morphologyEx(from: Mat, to: Mat, operation: number, kernel: Mat): void;
  getStructuringElement(shape: number, size: VisionSize): Mat;
  findContours(from: Mat, to: MatVector, hierarchy: Mat, mode: number, method: number): void;
  warpAffine(
    from: Mat,
    to: Mat,
    matrix: Mat,
    size: VisionSize,
    interpolation?: number,
    border?: number,
  ): void;
  blur(from: Mat, to: Mat, size: VisionSize): void;
  GaussianBlur(from: Mat, to: Mat, size: VisionSize, sigmaX: number, sigmaY?: number): void;
  distanceTransform(from: Mat, to: Mat, kind: number, mask: number): void;
  split(from: Mat, to: MatVector): void;
  grabCut(
    from: Mat,
    mask: Mat,
    box: VisionRect,
    floorModel: Mat,
    hideModel: Mat,
    rounds: number,
    mode: number,
  ): void;
}

export interface Mat {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  readonly data32S: Int32Array;
  readonly data32F: Float32Array;
  readonly data64F: Float64Array;
  roi(box: VisionRect): Mat;
  convertTo(to: Mat, type: number, scale?: number, offset?: number): void;
  delete(): void;
}

export interface MatVector {
  size(): number;
  get(index: number): Mat;
  delete(): void;
}

export interface VisionSize {
  readonly width: number;
  readonly height: number;
}

export interface VisionPoint {
  readonly x: number;
  readonly y: number;
}

export interface VisionRect extends VisionSize, VisionPoint {}

export interface MarkerDictionary {
  /** A picture of one marker with so many pixels a side, its black border so many fields wide. */
  generateImageMarker(id: number, sidePx: number, to: Mat, borderFields: number): void;
}

export interface MarkerDetectorParameters {
  adaptiveThreshWinSizeMin: number;
  adaptiveThreshWinSizeMax: number;
  adaptiveThreshWinSizeStep: number;
  minMarkerPerimeterRate: number;
  errorCorrectionRate: number;
  delete(): void;
}

export interface MarkerRefineParameters {
  delete(): void;
}

export interface MarkerDetector {
  /** Corners: a row of four pairs of 32-bit floats for each marker. Ids: 32-bit integers, one for each. */
  detectMarkers(picture: Mat, corners: MatVector, ids: Mat, rejected: MatVector): void;
  delete(): void;
}
