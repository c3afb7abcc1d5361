// Fields of the job: a number with its unit, a choice, a tick.
import type { Say, TextKey } from './texts.js';
import { h, type VNode } from './view-library.js';

/** A number, or null where it is not said. */
export interface NumberField {
  readonly id: string;
  readonly label: TextKey;
  readonly value: number | null;
  readonly unit: string;
  readonly onValue: (value: number | null) => void;
}

/** Draws a number. */
export function drawNumberField(say: Say, { id, label, value, unit, onValue }: NumberField): VNode {
  return h(
    'div',
    { class: 'field', key: id },
    h('label', { for: id }, say(label)),
    h(
      'span',
      { class: 'amount' },
      h('input', {
        id,
        type: 'number',
        step: 'any',
        min: 0,
        // Not while it is typed in: the page is drawn anew with every stage of the work.
        ref: (field: HTMLInputElement | null) => {
          if (field !== null && document.activeElement !== field) field.value = String(value ?? '');
        },
        placeholder: say('notSaid'),
        onChange: (event: Event) => {
          const { value: text } = event.currentTarget as HTMLInputElement;
          onValue(text.trim() === '' ? null : Number(text));
        },
      }),
      h('span', { class: 'quiet' }, unit),
    ),
  );
}

/** One of some words. */
export interface ChoiceField {
  readonly id: string;
  readonly label: TextKey;
  readonly value: string;
  readonly words: readonly (readonly [string, TextKey])[];
  readonly onValue: (value: string) => void;
}

/** Letters that a choice beside its label has room for. */
const ROOM_BESIDE = 15;

/** Draws a choice; under its label where its words are long. */
export function drawChoiceField(say: Say, { id, label, value, words, onValue }: ChoiceField): VNode {
  const isLong = words.some(([, key]) => say(key).length > ROOM_BESIDE);
  return h(
    'div',
    { class: isLong ? 'field field-long' : 'field', key: id },
    h('label', { for: id }, say(label)),
    h(
      'select',
      { id, value, onChange: (event: Event) => onValue((event.currentTarget as HTMLSelectElement).value) },
      words.map(([word, key]) => h('option', { value: word, key: word }, say(key))),
    ),
  );
}

/** Draws a tick. */
export function drawTick(
  { id, label }: { readonly id: string; readonly label: string },
  checked: boolean,
  onValue: (value: boolean) => void,
): VNode {
  const onChange = (event: Event): void => onValue((event.currentTarget as HTMLInputElement).checked);
  return h('label', { class: 'choice', key: label }, h('input', { id, type: 'checkbox', checked, onChange }), label);
}
