// Every answer that a question or a report shows as an example is a ticket that settles what it is shown for.
import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { drop, listRoom, openShop, SAMPLES, smallArt, watchOnce } from './shop.js';

/** The examples of a text, by the code they stand under or ''. */
function listExamples(text: string): readonly string[] {
  return [...text.matchAll(/^ {4}(\{.*\})$/gm)].map(([, json]) => json!);
}

/** Answers the question as often as another comes up, by nothing but its example; returns what was asked. */
async function answerAll(shop: string, name: string, pass: string): Promise<readonly string[]> {
  const asked: string[] = [];
  let ticket: object = {};
  for (let turns = 0; turns < 9 && listRoom(shop, 'waiting').includes(name); turns++) {
    const folder = join(shop, 'waiting', name);
    const question = readFileSync(join(folder, 'question.txt'), 'utf8');
    expect(question).not.toContain('--');
    asked.push(question.split('\n')[0]!);
    const [example] = listExamples(question);
    ticket = { ...ticket, ...(JSON.parse(example!.replaceAll('WHICH-PASS', pass)) as object) };
    writeFileSync(join(folder, 'ticket.json'), JSON.stringify(ticket));
    await watchOnce(shop);
  }
  return asked;
}

const narrow = smallArt(1).replace(
  'width="140mm" height="120mm" viewBox="0 0 140 120"',
  'width="60mm" height="60mm" viewBox="20 20 60 60"',
);

it.each([
  ['a layer that nobody claims', smallArt(1).replace('id="Print"', 'id="Layer 7"'), {}, 1],
  ['a hidden cut layer', smallArt(1).replace('id="Cut"', 'id="Cut" style="display:none"'), {}, 1],
  ['no room for the marks', narrow, {}, 1],
  [
    'a size without a unit under a strict ticket',
    smallArt(1).replace('width="140mm" height="120mm"', 'width="529" height="454"'),
    { severities: { 'resolve/size-unsure': 'error' } },
    1,
  ],
  [
    'a fill and a stroke in one shape',
    smallArt(1).replace('fill="none" stroke="#c2185b"', 'fill="#fff" stroke="#c2185b"'),
    {
      rules: [
        { pass: 'cutting', stroke: '#c2185b' },
        { pass: 'print', rest: true },
      ],
    },
    1,
  ],
  [
    'a layer that two rules claim',
    smallArt(1),
    {
      rules: [
        { pass: 'cutting', layer: 'Cut' },
        { pass: 'creasing', layer: 'C*' },
        { pass: 'print', layer: 'Print' },
      ],
    },
    1,
    'cutting',
  ],
  [
    'a layer whose rule says another pass than that of its lines',
    smallArt(1),
    {
      rules: [
        { pass: 'creasing', layer: 'Cut' },
        { pass: 'cutting', stroke: '#c2185b' },
        { pass: 'print', layer: 'Print' },
      ],
    },
    1,
    'cutting',
  ],
])('%s is settled by the examples alone', async (_what, art, ticket, count, pass = 'print') => {
  const shop = openShop();
  drop(shop, { 'a.svg': art, 'a.ticket.json': JSON.stringify({ pinbar: 1, ...ticket }) });
  await watchOnce(shop);
  expect(listRoom(shop, 'waiting')).toEqual(['a']);
  expect(await answerAll(shop, 'a', pass)).toHaveLength(count);
  expect(listRoom(shop, 'done')).toEqual(['a']);
  const manifest = JSON.parse(readFileSync(join(shop, 'out', listRoom(shop, 'out')[0]!, 'manifest.json'), 'utf8')) as {
    readonly passes: readonly { readonly role: string; readonly shapes: number }[];
  };
  // The cut line went to no other pass by it.
  expect(manifest.passes.map(({ role, shapes }) => [role, shapes])).toEqual([
    ['print', expect.any(Number)],
    ['cutting', 1],
  ]);
});

it('a clash that no rule of layer and colour settles is told without an example that would not settle it', async () => {
  const shop = openShop();
  const [one, other] = ['cutting', 'creasing'].map((pass) => ({ pass, layer: 'Cut', stroke: '#c2185b' }));
  drop(shop, {
    'a.svg': smallArt(1),
    'a.ticket.json': JSON.stringify({ pinbar: 1, rules: [one, other, { pass: 'print', layer: 'Print' }] }),
  });
  await watchOnce(shop);
  const question = readFileSync(join(shop, 'waiting/a/question.txt'), 'utf8');
  expect(listExamples(question)).toEqual([]);
  expect(question).toContain('take one of the rules out');
});

it('the report lists all of them at once', async () => {
  const shop = openShop();
  copyFileSync(join(SAMPLES, 'bad-carton.svg'), join(shop, 'in/a.svg'));
  copyFileSync(join(SAMPLES, 'bad-carton.ticket.json'), join(shop, 'in/a.ticket.json'));
  await watchOnce(shop);
  const report = readFileSync(join(shop, 'waiting/a/report/report.txt'), 'utf8');
  const answers = report.slice(report.indexOf('Answers in a ticket'));
  const keys = listExamples(answers).map((json) => Object.keys(JSON.parse(json) as object).join());
  expect(keys).toEqual(['pinbar,hidden', 'pinbar,rules', 'pinbar,partPaint', 'pinbar,rules', 'pinbar,linkedPictures']);
});

it('says what size each number of units makes, since only the designer knows which is right', async () => {
  const shop = openShop();
  drop(shop, {
    'a.svg': smallArt(1).replace('width="140mm" height="120mm"', 'width="720" height="480"'),
    'a.ticket.json': '{"pinbar": 1, "severities": {"resolve/size-unsure": "error"}}',
  });
  await watchOnce(shop);
  // 720 / 96 in = 7.5 in = 190.5 mm, 720 / 72 in = 10 in = 254 mm.
  expect(readFileSync(join(shop, 'waiting/a/question.txt'), 'utf8')).toContain(
    '96 makes it 190.5 x 127 mm, 72 makes it 254 x 169.33 mm.',
  );
});
