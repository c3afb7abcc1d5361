// The command that repeats the page.
import { expect, it } from 'vitest';
import { sayCommand } from '../../../src/page/say-command.js';

const NOTHING = { proofPage: false, profile: null, machine: '', material: '', sheets: 250 };

it('names drawing and ticket, quoted where a shell would not take them', () => {
  expect(sayCommand('a.svg', 'a', NOTHING)).toBe('pinbar split a.svg --ticket a.ticket.json');
  expect(sayCommand("it's a tag.svg", "it's a tag", NOTHING)).toBe(
    "pinbar split 'it'\\''s a tag.svg' --ticket 'it'\\''s a tag.ticket.json'",
  );
  expect(sayCommand('-a.svg', '-a', NOTHING)).toBe('pinbar split ./-a.svg --ticket ./-a.ticket.json');
});

it('asks for what goes along', () => {
  const profile = { name: 'shop.profile.json', text: '{}', machines: [], materials: [] };
  expect(sayCommand('a.svg', 'a', { proofPage: true, profile, machine: 'table', material: '', sheets: 12 })).toBe(
    'pinbar split a.svg --ticket a.ticket.json --proof html --profile shop.profile.json --machine table --sheets 12',
  );
});
