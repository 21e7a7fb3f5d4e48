// What the core says comes as the id of a message with its arguments; here it gets its words. The desk puts every answer through
// this, so that the pages see texts.
import type { FluentType } from '@fluent/bundle';
import type { Unit } from '../door/wire.ts';
import { PlainNumber } from './catalogue.ts';
import { core, dayInWords, listed, momentInWords, Quantity, TimeSpan, type ListStyle } from './core.ts';

/** A message as it crosses the door (`core/src/message`). */
export interface RawMessage {
  messageId: string;
  arguments: { name: string; value: Argument }[];
}

export type Argument =
  | { kind: 'quantity'; value: number; unit: Unit }
  | { kind: 'count'; count: number }
  | { kind: 'text'; text: string }
  | { kind: 'message'; message: RawMessage }
  | { kind: 'several'; items: RawMessage[]; style: ListStyle }
  | { kind: 'choice'; choice: string }
  | { kind: 'day'; day: string }
  | { kind: 'localTime'; day: string; minute: number }
  | { kind: 'duration'; minutes: number };

function value(argument: Argument): string | FluentType<unknown> {
  switch (argument.kind) {
    case 'quantity':
      return new Quantity(argument.value, argument.unit);
    case 'count':
      return new PlainNumber(argument.count);
    case 'text':
      return argument.text;
    case 'message':
      return say(argument.message);
    case 'several':
      return listed(argument.items.map(say), argument.style);
    case 'choice':
      return argument.choice;
    case 'day':
      return dayInWords(argument.day);
    case 'localTime':
      return momentInWords(dayInWords(argument.day), argument.minute);
    case 'duration':
      return new TimeSpan(argument.minutes);
  }
}

/** A message in words. */
export function say(said: RawMessage): string {
  return core.format(said.messageId, Object.fromEntries(said.arguments.map((argument) => [argument.name, value(argument.value)])));
}

/** The same answer with words in place of its messages. It comes fresh from the door, so it is changed where it stands. */
export function worded(answer: unknown): unknown {
  if (answer === null || typeof answer !== 'object' || ArrayBuffer.isView(answer)) return answer;
  if ('messageId' in answer) return say(answer as RawMessage);
  const fields = answer as Record<string, unknown>;
  for (const [name, field] of Object.entries(fields)) {
    if (field !== null && typeof field === 'object') fields[name] = worded(field);
  }
  return answer;
}
