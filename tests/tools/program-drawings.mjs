// The pattern that drawing programs are given to save. All figures in mm; each unit writes them in its own numbers.
//
// panel:  rounded rectangle 80 x 50, corners 6, at (20, 15); within it a closed dashed line 70 x 40 at (25, 20),
//         and the text "panel"
// twin:   a clone of the panel, 60 lower
// tab:    half a disc of radius 15 on a rectangle 30 x 40, in a group turned by 30 degrees; its arc has its ends at
//         (130, 60) and (160, 60) before the group is turned about (145, 60)
// The layer "cut" is moved by (10, 5) in the file; the numbers above are where things end up, as are those below.

export const DRAWN = {
  panel: { x: 20, y: 15, width: 80, height: 50, radius: 6 },
  stitch: { x: 25, y: 20, width: 70, height: 40 },
  twin: { x: 20, y: 75, width: 80, height: 50 },
  tab: { cx: 145, cy: 60, radius: 15, length: 40, turnedDeg: 30 },
};

const LAYER_MOVED = { x: 10, y: 5 };
const PAGE = { width: 220, height: 160 };

/** Units of the drawing to the mm. */
const PER_MM = { mm: 1, in: 1 / 25.4, px: 96 / 25.4 };

/** Inkscape draws the clone and turns the group itself: a drawing with a moved layer is opened, then edited by actions. */
export function inkscapeInput(unit) {
  const per = PER_MM[unit];
  const n = (mm) => Number((mm * per).toFixed(unit === 'in' ? 7 : 5));
  const inLayer = (x, y) => ({ x: x - LAYER_MOVED.x, y: y - LAYER_MOVED.y });
  const panel = inLayer(DRAWN.panel.x, DRAWN.panel.y);
  const stitch = inLayer(DRAWN.stitch.x, DRAWN.stitch.y);
  const tab = inLayer(DRAWN.tab.cx, DRAWN.tab.cy);
  const { radius: r, length } = DRAWN.tab;
  const size =
    unit === 'px'
      ? `width="${n(PAGE.width)}" height="${n(PAGE.height)}"`
      : `width="${n(PAGE.width)}${unit}" height="${n(PAGE.height)}${unit}"`;
  const svg = `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"
  xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape"
  xmlns:sodipodi="http://sodipodi.sourceforge.net/DTD/sodipodi-0.dtd"
  ${size} viewBox="0 0 ${n(PAGE.width)} ${n(PAGE.height)}">
  <sodipodi:namedview inkscape:document-units="${unit}"/>
  <g id="layer1" inkscape:groupmode="layer" inkscape:label="cut" transform="translate(${n(LAYER_MOVED.x)},${n(LAYER_MOVED.y)})">
    <rect id="rect1" inkscape:label="panel" style="fill:none;stroke:#000000;stroke-width:${n(0.3)}"
      x="${n(panel.x)}" y="${n(panel.y)}" width="${n(80)}" height="${n(50)}" rx="${n(6)}" ry="${n(6)}"/>
    <use id="use1" inkscape:label="twin" xlink:href="#rect1" transform="translate(0,${n(60)})"/>
    <g id="g1" inkscape:label="tab" transform="rotate(30,${n(tab.x)},${n(tab.y)})">
      <path id="path1" style="fill:none;stroke:#000000;stroke-width:${n(0.3)}"
        d="M ${n(tab.x - r)},${n(tab.y)} A ${n(r)},${n(r)} 0 0 1 ${n(tab.x + r)},${n(tab.y)} V ${n(tab.y + length)} H ${n(tab.x - r)} Z"/>
    </g>
  </g>
  <g id="layer2" inkscape:groupmode="layer" inkscape:label="stitch" transform="translate(${n(LAYER_MOVED.x)},${n(LAYER_MOVED.y)})">
    <rect id="rect2" style="fill:none;stroke:#000000;stroke-width:${n(0.2)};stroke-dasharray:${n(2)},${n(1)}"
      x="${n(stitch.x)}" y="${n(stitch.y)}" width="${n(70)}" height="${n(40)}"/>
  </g>
  <g id="layer3" inkscape:groupmode="layer" inkscape:label="text">
    <text id="text1" x="${n(35)}" y="${n(40)}" style="font-size:${n(6)}px;font-family:sans-serif"><tspan id="tspan1">panel</tspan></text>
  </g>
</svg>
`;
  // Turned right round in steps that end where they began, and moved there and back: the program writes every transform anew.
  const actions = ['select-by-id:g1', 'transform-rotate:90', 'transform-rotate:-90', 'select-clear'];
  return { svg, actions };
}

/**
 * Flat OpenDocument drawing; LibreOffice Draw has no clones in a file, so the twin is a second shape. The dashed line
 * has the width 0, the program's default: it then writes every dash as a path of its own (7.4 loses the dashes of wider
 * lines). Its transforms know no px, so that one place is written in inches where the rest is in px.
 */
export function officeInput(unit) {
  const suffix = unit === 'px' ? 'px' : unit;
  const l = (mm) => `${Number((mm * PER_MM[unit]).toFixed(6))}${suffix}`;
  const t = (mm) => (unit === 'px' ? `${Number((mm / 25.4).toFixed(6))}in` : l(mm));
  const { panel, stitch, twin, tab } = DRAWN;
  const turn = (-tab.turnedDeg * Math.PI) / 180;
  // The shape's box before turning has its top left corner at (cx - r, cy - r); turned about (cx, cy).
  const cos = Math.cos(-turn);
  const sin = Math.sin(-turn);
  const cornerX = tab.cx + cos * -tab.radius - sin * -tab.radius;
  const cornerY = tab.cy + sin * -tab.radius + cos * -tab.radius;
  return `<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0"
  xmlns:style="urn:oasis:names:tc:opendocument:xmlns:style:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"
  xmlns:draw="urn:oasis:names:tc:opendocument:xmlns:drawing:1.0" xmlns:xlink="http://www.w3.org/1999/xlink"
  xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0"
  xmlns:svg="urn:oasis:names:tc:opendocument:xmlns:svg-compatible:1.0"
  office:version="1.2" office:mimetype="application/vnd.oasis.opendocument.graphics">
<office:styles>
  <draw:stroke-dash draw:name="Stitches" draw:style="rect" draw:dots1="1" draw:dots1-length="${l(2)}" draw:distance="${l(1)}"/>
</office:styles>
<office:automatic-styles>
  <style:page-layout style:name="PM1"><style:page-layout-properties fo:margin-top="0mm" fo:margin-bottom="0mm"
    fo:margin-left="0mm" fo:margin-right="0mm" fo:page-width="${l(PAGE.width)}" fo:page-height="${l(PAGE.height)}"/></style:page-layout>
  <style:style style:name="cut" style:family="graphic"><style:graphic-properties draw:stroke="solid"
    svg:stroke-width="${l(0.3)}" svg:stroke-color="#000000" draw:fill="none"/></style:style>
  <style:style style:name="stitches" style:family="graphic"><style:graphic-properties draw:stroke="dash"
    draw:stroke-dash="Stitches" svg:stroke-width="0" svg:stroke-color="#000000" draw:fill="none"/></style:style>
  <style:style style:name="words" style:family="graphic"><style:graphic-properties draw:stroke="none" draw:fill="none"/></style:style>
</office:automatic-styles>
<office:master-styles><style:master-page style:name="Default" style:page-layout-name="PM1"/></office:master-styles>
<office:body><office:drawing><draw:page draw:name="page1" draw:master-page-name="Default">
  <draw:rect draw:name="panel" draw:style-name="cut" draw:corner-radius="${l(panel.radius)}"
    svg:x="${l(panel.x)}" svg:y="${l(panel.y)}" svg:width="${l(panel.width)}" svg:height="${l(panel.height)}"><svg:title>panel</svg:title></draw:rect>
  <draw:rect draw:name="stitch" draw:style-name="stitches"
    svg:x="${l(stitch.x)}" svg:y="${l(stitch.y)}" svg:width="${l(stitch.width)}" svg:height="${l(stitch.height)}"/>
  <draw:rect draw:name="twin" draw:style-name="cut" draw:corner-radius="${l(panel.radius)}"
    svg:x="${l(twin.x)}" svg:y="${l(twin.y)}" svg:width="${l(twin.width)}" svg:height="${l(twin.height)}"><svg:title>twin</svg:title></draw:rect>
  <draw:g draw:name="tab"><draw:path draw:name="tab-line" draw:style-name="cut"
    draw:transform="rotate (${turn}) translate (${t(cornerX)} ${t(cornerY)})"
    svg:width="${l(2 * tab.radius)}" svg:height="${l(tab.radius + tab.length)}" svg:viewBox="0 0 3000 5500"
    svg:d="M0 1500A1500 1500 0 0 1 3000 1500L3000 5500H0Z"><svg:title>tab</svg:title></draw:path></draw:g>
  <draw:frame draw:style-name="words" svg:x="${l(35)}" svg:y="${l(32)}" svg:width="${l(40)}" svg:height="${l(10)}">
    <draw:text-box><text:p>panel</text:p></draw:text-box></draw:frame>
</draw:page></office:drawing></office:body></office:document>
`;
}
