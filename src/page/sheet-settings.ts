// Copies on a sheet: how large it is, what stays free, how many there are and how they lie.
import type { SheetRequest } from '../model/layout.js';
import { DEFAULT_SHEET } from '../ticket/default-ticket.js';
import { drawChoiceField, drawNumberField, drawOwnField, drawTick } from './job-fields.js';
import type { PageState, PartProps } from './page-state.js';
import { fixed, type TextKey } from './texts.js';
import { h, type VNode } from './view-library.js';

const LENGTHS = ['widthMm', 'heightMm', 'marginsMm', 'gripperMm'] as const;
const UPS = /^(?:max|[1-9]\d{0,3}|[1-9]\d{0,3}x[1-9]\d{0,3})$/;

/** A sheet to begin with: as large as the material, or as the drawing. */
function beginSheet({ history, inspection }: PageState): SheetRequest {
  const { materialWidthMm, materialHeightMm } = history.present.checks;
  const { widthMm, heightMm } = inspection!.artboard;
  return { ...DEFAULT_SHEET, widthMm: materialWidthMm ?? widthMm, heightMm: materialHeightMm ?? heightMm };
}

function setSheet({ acts }: PartProps, sheet: SheetRequest | null): void {
  acts.changeTicket(({ sheet: _, ...ticket }) => (sheet === null ? ticket : { ...ticket, sheet }));
}

/** Copies as they are typed; undefined for what cannot be read. */
function readUps(typed: string): SheetRequest['ups'] | undefined {
  const text = typed.toLowerCase().replace(/\s*[x×*]\s*/, 'x');
  if (!UPS.test(text)) return undefined;
  return /^\d+$/.test(text) ? Number(text) : text;
}

function drawUps(props: PartProps, sheet: SheetRequest): VNode {
  const { say } = props;
  return drawOwnField({
    id: 'sheet-ups',
    label: say('sheet.ups'),
    text: String(sheet.ups),
    read: readUps,
    wanted: say('sheet.upsWanted'),
    onValue: (ups) => setSheet(props, { ...sheet, ups }),
  });
}

function drawTurn(props: PartProps, sheet: SheetRequest): VNode {
  const words = ['', '0', '90', '180', '270', 'head-to-tail'] as const;
  return drawChoiceField(props.say, {
    id: 'sheet-turn',
    label: 'sheet.turn',
    value: String(sheet.turn ?? ''),
    words: words.map((word) => [word, `sheet.turn.${word === '' ? 'best' : word}` as TextKey]),
    onValue: (value) => {
      const { turn: _, ...rest } = sheet;
      const turn = value === 'head-to-tail' ? value : (Number(value) as NonNullable<SheetRequest['turn']>);
      setSheet(props, value === '' ? rest : { ...rest, turn });
    },
  });
}

function drawSide(props: PartProps, sheet: SheetRequest): VNode {
  return drawChoiceField(props.say, {
    id: 'sheet-side',
    label: 'sheet.side',
    value: sheet.gripperSide,
    words: (['bottom', 'top', 'left', 'right'] as const).map((side) => [side, `side.${side}`]),
    onValue: (value) => setSheet(props, { ...sheet, gripperSide: value as SheetRequest['gripperSide'] }),
  });
}

/** A sheet with this clear distance across, and another down where it differs. */
export function spaceOut(sheet: SheetRequest, across: number, down: number | null): SheetRequest {
  const { gutterXMm: _, gutterYMm: __, ...rest } = sheet;
  if (down === null || down === across) return { ...rest, gutterMm: across };
  return { ...rest, gutterMm: across, gutterXMm: across, gutterYMm: down };
}

function drawGutter(props: PartProps, sheet: SheetRequest): readonly VNode[] {
  const across = sheet.gutterXMm ?? sheet.gutterMm;
  const down = sheet.gutterYMm ?? sheet.gutterMm;
  const other = down === across ? null : down;
  return [
    drawNumberField(props.say, {
      id: 'sheet-gutterMm',
      label: 'sheet.gutterMm',
      value: across,
      unit: 'mm',
      onValue: (value) => setSheet(props, spaceOut(sheet, value ?? 0, other)),
    }),
    drawNumberField(props.say, {
      id: 'sheet-gutterYMm',
      label: 'sheet.gutterYMm',
      value: other,
      unit: 'mm',
      onValue: (value) => setSheet(props, spaceOut(sheet, across, value)),
    }),
  ];
}

/** Where the copies stand, how large they are, and whether each is marked. */
function drawStand(props: PartProps, sheet: SheetRequest): readonly VNode[] {
  const { say } = props;
  return [
    drawChoiceField(say, {
      id: 'sheet-place',
      label: 'sheet.place',
      value: sheet.place,
      words: (['centre', 'origin'] as const).map((place) => [place, `sheet.place.${place}`]),
      onValue: (value) => setSheet(props, { ...sheet, place: value as SheetRequest['place'] }),
    }),
    drawNumberField(say, {
      id: 'sheet-scale',
      label: 'sheet.scale',
      value: sheet.scale,
      unit: '×',
      onValue: (value) => setSheet(props, { ...sheet, scale: value === null || value === 0 ? 1 : value }),
    }),
    drawTick({ id: 'sheet-copyMark', label: say('sheet.copyMark') }, sheet.copyMark, (copyMark) =>
      setSheet(props, { ...sheet, copyMark }),
    ),
  ];
}

function drawCopies(props: PartProps, sheet: SheetRequest): VNode {
  return drawChoiceField(props.say, {
    id: 'sheet-copies',
    label: 'sheet.copies',
    value: sheet.copies,
    words: (['written', 'referenced'] as const).map((how) => [how, `sheet.copies.${how}`]),
    onValue: (value) => setSheet(props, { ...sheet, copies: value as SheetRequest['copies'] }),
  });
}

/** The fields of the sheet; the tick alone where there is none. */
export function drawSheetFields(props: PartProps): readonly (VNode | null)[] {
  const { state, say } = props;
  const sheet = state.history.present.sheet ?? null;
  const tick = drawTick({ id: 'sheet-wanted', label: say('sheet.wanted') }, sheet !== null, (wanted) =>
    setSheet(props, wanted ? beginSheet(state) : null),
  );
  if (sheet === null) return [tick];
  const made = state.job?.sheet ?? null;
  const lengths = LENGTHS.map((key) =>
    drawNumberField(say, {
      id: `sheet-${key}`,
      label: `sheet.${key}`,
      value: sheet[key],
      unit: 'mm',
      onValue: (value) => setSheet(props, { ...sheet, [key]: value ?? (key in DEFAULT_SHEET ? 0 : sheet[key]) }),
    }),
  );
  const found =
    made === null
      ? null
      : h(
          'p',
          { class: 'quiet', key: 'found', id: 'sheet-found' },
          say('sheet.found', made.copies.length, fixed(100 * made.yieldShare, 0)),
        );
  return [
    tick,
    ...lengths,
    drawSide(props, sheet),
    ...drawGutter(props, sheet),
    drawUps(props, sheet),
    drawTurn(props, sheet),
    ...drawStand(props, sheet),
    drawCopies(props, sheet),
    found,
  ];
}
