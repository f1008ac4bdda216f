/**
 * Marks as SVG text. Lengths are pixels. Words are escaped here and nowhere else. Neither clips nor groups with an opacity of
 * their own: each would cost the renderer a whole picture's worth of pixels.
 */
import { tableOf } from '../ground/table-of.js';
import { DIAMOND_RIM, WORD_RIM, type Mark, type Marks, type Point } from './marks.js';

const ENTITY = tableOf({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' });
/** XML 1.0, section 2.2: what no document may hold, escaped or not. */
// eslint-disable-next-line no-control-regex -- those very characters are meant
const FORBIDDEN = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|\p{Surrogate}/gu;

const escaped = (text: string): string =>
  text.replace(FORBIDDEN, '').replace(/[&<>"]/gu, (character) => ENTITY.get(character) ?? '');

const px = (value: number): string => String(Math.round(value * 100) / 100);

const opacityOf = (opacity: number): string => (opacity === 1 ? '' : ` fill-opacity="${opacity.toFixed(2)}"`);

const wordsSvg = ({ text, at: [x, y], style }: Extract<Mark, { kind: 'words' }>): string => {
  const { size, colour, anchor = 'start', isUpright = false, rim } = style;
  const turn = isUpright ? ` transform="rotate(-90 ${px(x)} ${px(y)})"` : '';
  const halo =
    rim === undefined ? '' : ` stroke="${rim}" stroke-width="${WORD_RIM}" stroke-linejoin="round" paint-order="stroke"`;
  return `<text x="${px(x)}" y="${px(y)}" font-size="${size}" fill="${colour}" text-anchor="${anchor}"${turn}${halo}>${escaped(text)}</text>`;
};

const linesSvg = ({ lines, style: { colour, width, dashes } }: Extract<Mark, { kind: 'lines' }>): string => {
  const d = lines.map((line) => line.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${px(x)} ${px(y)}`).join('')).join('');
  const dashed = dashes === undefined ? '' : ` stroke-dasharray="${dashes.join(' ')}"`;
  return `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${width}" stroke-linejoin="round"${dashed}/>`;
};

const pairs = (points: readonly Point[]): string => points.map(([x, y]) => `${px(x)},${px(y)}`).join(' ');

const markSvg = (mark: Mark): string => {
  switch (mark.kind) {
    case 'words':
      return wordsSvg(mark);
    case 'lines':
      return linesSvg(mark);
    case 'rectangle': {
      const { at, size, fill, opacity } = mark;
      return `<rect x="${px(at[0])}" y="${px(at[1])}" width="${px(size[0])}" height="${px(size[1])}" fill="${fill}"${opacityOf(opacity)}/>`;
    }
    case 'area':
      return `<polygon points="${pairs(mark.points)}" fill="${mark.fill}"${opacityOf(mark.opacity)}/>`;
    case 'dot':
      return `<circle cx="${px(mark.at[0])}" cy="${px(mark.at[1])}" r="${mark.radius}" fill="${mark.fill}"/>`;
    case 'diamond': {
      const { at, reach, fill, rim } = mark;
      return `<path d="M${px(at[0])} ${px(at[1] - reach)}l${reach} ${reach}l${-reach} ${reach}l${-reach} ${-reach}z" fill="${fill}" stroke="${rim}" stroke-width="${DIAMOND_RIM}"/>`;
    }
  }
};

export const marksSvg = (marks: Marks): string => marks.map(markSvg).join('');
