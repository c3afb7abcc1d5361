// Words that people write on layers, and the roles they speak of. Common practice, no source.
import type { Role } from '../model/pass.js';

/** Words by role: English, German, French, Spanish, Italian, Portuguese, Dutch, Polish and Japanese; accents folded, lower case. */
export const LAYER_WORDS: Readonly<Partial<Record<Role, string>>> = {
  creasing:
    'crease creases creasing creaselines score scores scoring fold folds folding foldline foldlines ' +
    'rillen rillung rilllinie rilllinien rillinie rillinien falz falzen falzlinie falzlinien faltlinie faltlinien faltung ' +
    'rainage rainages rainure rainures rainer pli plis pliage hendido hendidos pliegue pliegues plegado doblez ' +
    'cordonatura cordonature cordonare piega pieghe piegatura vinco vincos vincagem dobras rillijn rillijnen ril ' +
    'vouw vouwen vouwlijn vouwlijnen bigowanie bigowania falc falcowanie zagiecie zagiecia 罫線 折り 折り線 折線 折り目 筋押し スジ',
  cutting:
    'cut cuts cutting cutline cutlines diecut diecuts dieline dielines knife contour ' +
    'schnitt schnitte schneiden schnittlinie schnittlinien stanze stanzen stanzung stanzlinie stanzlinien stanzkontur kontur konturschnitt ' +
    'coupe coupes couper decoupe decoupes corte cortes cortar troquel troquelado taglio tagli fustella fustellatura faca ' +
    'snijden snijlijn snijlijnen stans stanslijn stansen snede ciecie ciecia wykrojnik wycinanie カット 切り 切り取り 抜き 抜き型 型抜き',
  'partial-cutting': 'halfcut kisscut halbschnitt semicorte mezzotaglio meiocorte nacinanie naciecie ハーフカット',
  perforating:
    'perf perfs perforate perforated perforating perforation perforations perforieren perforierung perforer predecoupe ' +
    'perforado perforacion perforaciones perforar perforazione perforazioni perforato perfuracao picote picotagem ' +
    'perforatie perforeren perforacja perforacje ミシン目',
  print:
    'print prints printing printed art artwork colour colours color colors cmyk image images picture pictures ' +
    'druck drucken druckbild druckdaten grafik grafiken farbe farben bild bilder impression imprimer visuel ' +
    'impresion imprimir arte stampa stampare grafica impressao druk drukken opdruk nadruk grafika 印刷 デザイン アートワーク 版下',
  white: 'white weiss blanc blanche blanco bianco branco wit bialy biala 白 白版 ホワイト',
  varnish:
    'varnish varnishes varnishing gloss lack lackierung lackieren spotlack vernis barniz vernice verniz lak lakier ニス',
  'foil-stamping': 'foil foiling hotfoil heissfolie folienpragung dorure 箔 箔押し',
  'cold-foil-stamping': 'coldfoil kaltfolie コールドフォイル',
  embossing: 'emboss embossing embossed pragung pragen gaufrage rilievo relevo tloczenie エンボス 浮き出し',
  debossing: 'deboss debossing debossed tiefpragung デボス',
  gluing:
    'glue gluing glueing adhesive kleben klebung klebeflache leim colle encolado colla incollaggio colagem lijm lijmen klej klejenie 糊 のり 接着',
  drilling:
    'drill drills drilling bohren bohrung bohrungen percage taladro taladros foratura furacao boren wiercenie 穴あけ',
  punching: 'punch punching lochen lochung lochungen',
  ignore:
    'guide guides guideline guidelines note notes dimension dimensions legend info infos noprint ' +
    'hilfslinie hilfslinien notiz notizen bemassung legende repere reperes guia guias nota notas guida appunti ' +
    'hulplijn hulplijnen notitie notities uwagi wymiary pomocnicze ガイド 注釈 寸法',
};

/** Words one after the other that mean more than each alone; the longest counts. */
const PHRASES: readonly (readonly [string, Role])[] = [
  ['kiss cut', 'partial-cutting'],
  ['kiss cuts', 'partial-cutting'],
  ['kiss cutting', 'partial-cutting'],
  ['half cut', 'partial-cutting'],
  ['half cuts', 'partial-cutting'],
  ['half cutting', 'partial-cutting'],
  ['partial cut', 'partial-cutting'],
  ['partial cuts', 'partial-cutting'],
  ['partial cutting', 'partial-cutting'],
  ['medio corte', 'partial-cutting'],
  ['meio corte', 'partial-cutting'],
  ['mezzo taglio', 'partial-cutting'],
  ['mi chair', 'partial-cutting'],
  ['reverse crease', 'reverse-creasing'],
  ['reverse creases', 'reverse-creasing'],
  ['reverse creasing', 'reverse-creasing'],
  ['reverse score', 'reverse-creasing'],
  ['reverse partial cut', 'reverse-partial-cutting'],
  ['reverse partial cutting', 'reverse-partial-cutting'],
  ['print white', 'white'],
  ['white print', 'white'],
  ['hot foil', 'foil-stamping'],
  ['foil stamping', 'foil-stamping'],
  ['cold foil', 'cold-foil-stamping'],
  ['cold foil stamping', 'cold-foil-stamping'],
  ['no print', 'ignore'],
  ['non printing', 'ignore'],
  ['not printed', 'ignore'],
  ['do not print', 'ignore'],
  ['dont print', 'ignore'],
  ['nicht drucken', 'ignore'],
  ['ne pas imprimer', 'ignore'],
  ['no imprimir', 'ignore'],
  ['non stampare', 'ignore'],
  ['nao imprimir', 'ignore'],
  ['niet drukken', 'ignore'],
  ['nie drukowac', 'ignore'],
  ['印刷しない', 'ignore'],
];

/** `die` is the German article too: it speaks only where no other word does. */
const WEAK: ReadonlyMap<string, Role> = new Map([
  ['die', 'cutting'],
  ['dies', 'cutting'],
]);

/** Words that turn what follows them into its opposite. */
const NEGATIONS: ReadonlySet<string> = new Set(
  (
    'no not dont never without nicht kein keine keinen ohne ne pas sans non sin nunca senza nao sem niet geen zonder ' +
    'nie bez'
  ).split(' '),
);

/** Parts of Japanese names that say nothing of the role. */
const NEUTRAL = /^(?:線|ライン|版|レイヤー|レイヤ|データ|用|面|部|の|パス)+$/u;

const ROLE_OF: ReadonlyMap<string, Role> = new Map(
  Object.entries(LAYER_WORDS).flatMap(([role, words]) => words.split(' ').map((word) => [word, role as Role] as const)),
);
const PHRASE_OF: ReadonlyMap<string, Role> = new Map(PHRASES);
const LONGEST_PHRASE = 4;

/** What a name speaks of. */
export interface NameReading {
  /** The role, or null where the name names none or several. */
  readonly role: Role | null;
  /** The words it was read from. */
  readonly words: readonly string[];
  /** The roles named, be they one or several. */
  readonly roles: readonly Role[];
  /** Why roles are named but none is taken: several, or a word such as "not" before them. */
  readonly doubt: 'several' | 'negated' | null;
}

/** Most folded texts are plain, and those are many. */
const ASCII = /^[ -~]*$/;

/** Lower case without accents; `ß` as ss, `ł` as l. Marks of Japanese stay, since they tell letters apart. */
export function foldWord(text: string): string {
  if (ASCII.test(text)) return text.toLowerCase();
  return text
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .normalize('NFC')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .replace(/ł/g, 'l')
    .replace(/ø/g, 'o');
}

/** Whole words of a name: parted at anything but letters, and inside camelCase. */
export function splitWords(name: string): readonly string[] {
  return name
    .normalize('NFC')
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replace(/(\p{Lu})(\p{Lu}\p{Ll})/gu, '$1 $2')
    .replace(/(n)['’](t)\b/gi, '$1$2')
    .split(/[^\p{L}\p{M}ー]+/u)
    .filter((word) => word !== '')
    .map(foldWord);
}

/** Role of one word; a Japanese word may carry neutral parts around a known one. */
function roleOfWord(word: string): Role | null {
  const known = ROLE_OF.get(word);
  if (known !== undefined) return known;
  if (!/[\u3040-\u30ff\u4e00-\u9fff]/u.test(word)) return null;
  for (let length = word.length; length > 0; length -= 1) {
    for (let at = 0; at + length <= word.length; at += 1) {
      const role = ROLE_OF.get(word.slice(at, at + length));
      if (role === undefined) continue;
      const rest = [word.slice(0, at), word.slice(at + length)].filter((part) => part !== '');
      if (rest.every((part) => NEUTRAL.test(part))) return role;
    }
  }
  return null;
}

interface FoundWord {
  readonly role: Role;
  readonly word: string;
  /** Place of its first word in the name. */
  readonly at: number;
  /** How many words it takes. */
  readonly taken: number;
}

/** The longest phrase that begins at a word. */
function findPhrase(words: readonly string[], at: number): FoundWord | null {
  for (let taken = Math.min(LONGEST_PHRASE, words.length - at); taken > 1; taken -= 1) {
    const word = words.slice(at, at + taken).join(' ');
    const role = PHRASE_OF.get(word);
    if (role !== undefined) return { role, word, at, taken };
  }
  return null;
}

function findWord(words: readonly string[], at: number): FoundWord | null {
  const word = words[at]!;
  const role = PHRASE_OF.get(word) ?? roleOfWord(word);
  return role === null ? null : { role, word, at, taken: 1 };
}

/** Every word or phrase that names a role; the weak ones where there is no other. */
function findRoleWords(words: readonly string[]): readonly FoundWord[] {
  const found: FoundWord[] = [];
  for (let at = 0; at < words.length; ) {
    const next = findPhrase(words, at) ?? findWord(words, at);
    if (next !== null) found.push(next);
    at += next?.taken ?? 1;
  }
  if (found.length > 0) return found;
  return words.flatMap((word, at) => (WEAK.has(word) ? [{ role: WEAK.get(word)!, word, at, taken: 1 }] : []));
}

const LONGEST_NAME = 500;

/** Reads the words of a name as roles. */
export function readName(name: string): NameReading {
  const words = splitWords(name.slice(0, LONGEST_NAME));
  const found = findRoleWords(words);
  const roles = [...new Set(found.map((item) => item.role))];
  const isNegated = found.some(
    ({ role, at }) => role !== 'ignore' && words.slice(0, at).some((word) => NEGATIONS.has(word)),
  );
  const doubt = roles.length > 1 ? 'several' : isNegated ? 'negated' : null;
  const role = doubt === null && roles.length === 1 ? roles[0]! : null;
  return { role, words: found.map((item) => item.word), roles, doubt };
}
