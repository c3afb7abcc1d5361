// Fields of the job: a number with its unit, a choice, a tick.
import { readAmount } from './read-amount.js';
import type { Say, TextKey } from './texts.js';
import { h, useEffect, useState, type VNode } from './view-library.js';

/** A field that is typed in. `read` gives undefined for what cannot be read. */
interface TypedField<T> {
  readonly id: string;
  readonly label: string;
  readonly text: string;
  readonly unit: string;
  readonly placeholder: string;
  readonly read: (text: string) => T | undefined;
  /** What can be read, in words. */
  readonly wanted: string;
  readonly onValue: (value: T) => void;
}

/**
 * Draws a field that is typed in. What is being typed stays, whatever is drawn anew, until it is read; what cannot be read stays too, and
 * says so.
 */
function TypedField<T>({ id, label, text, unit, placeholder, read, wanted, onValue }: TypedField<T>): VNode {
  const [draft, setDraft] = useState<string | null>(null);
  const [isFaulty, setFaulty] = useState(false);
  const leave = (): void => {
    setDraft(null);
    setFaulty(false);
  };
  useEffect(leave, [text]);
  const onChange = (event: Event): void => {
    const value = read((event.currentTarget as HTMLInputElement).value.trim());
    if (value === undefined) {
      setFaulty(true);
      return;
    }
    leave();
    onValue(value);
  };
  const fault = `${id}-fault`;
  return h(
    'div',
    { class: 'field' },
    h('label', { for: id }, label),
    h(
      'span',
      { class: 'amount' },
      h('input', {
        id,
        type: 'text',
        inputMode: 'decimal',
        autocomplete: 'off',
        value: draft ?? text,
        placeholder,
        // Keys that take back belong to what is typed.
        'data-typing': draft === null || draft === text ? null : '',
        'aria-invalid': isFaulty ? 'true' : null,
        'aria-describedby': isFaulty ? fault : null,
        onInput: (event: Event) => {
          setDraft((event.currentTarget as HTMLInputElement).value);
          setFaulty(false);
        },
        onChange,
      }),
      h('span', { class: 'quiet' }, unit),
    ),
    isFaulty ? h('p', { class: 'field-fault', id: fault, role: 'alert' }, wanted) : null,
  );
}

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
  const sign = say('decimalSign') as '.' | ',';
  return h(TypedField<number | null>, {
    key: id,
    ...{ id, unit, onValue },
    label: say(label),
    text: value === null ? '' : String(value).replace('.', sign),
    placeholder: say('notSaid'),
    read: (text) => readAmount(text, sign),
    wanted: say('wantedNumber'),
  });
}

/** Draws words or numbers that are read in a way of their own. */
export function drawOwnField<T>(field: Omit<TypedField<T>, 'unit' | 'placeholder'>): VNode {
  return h(TypedField<T>, { key: field.id, ...field, unit: '', placeholder: '' });
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

/** The file that was chosen. The field forgets it, so that the same one, mended, can be chosen again. */
export function takeFile(event: Event): File | undefined {
  const field = event.currentTarget as HTMLInputElement;
  const [file] = field.files ?? [];
  field.value = '';
  return file;
}
