// What a message wants to be filled in.
import { Visitor } from '@fluent/syntax';

/** Looks into one message: what is printed, and with which keys it is chosen by. */
export class Filled extends Visitor {
  printed = new Set();
  /** @type {Map<string, (string | number)[]>} */
  chosen = new Map();

  visitSelectExpression(node) {
    const keys = node.variants.map(({ key }) => (key.type === 'Identifier' ? key.name : Number(key.value)));
    if (node.selector.type === 'VariableReference') {
      const { name } = node.selector.id;
      this.chosen.set(name, [...(this.chosen.get(name) ?? []), ...keys]);
    }
    for (const variant of node.variants) this.visit(variant);
  }

  visitVariableReference(node) {
    this.printed.add(node.id.name);
  }

  /** The names of all that is filled in. */
  get names() {
    return [...new Set([...this.chosen.keys(), ...this.printed])].sort();
  }

  static in(message) {
    const seen = new Filled();
    seen.visit(message);
    return seen;
  }
}
