import { createParse } from 'mathjs'
import { ExpressionError } from './problem.js'
import type { FunctionName, Operator, Tree } from './tree.js'

declare module 'mathjs' {
  /** mathjs's parser without its nodes: exported, but left out of its types. Kept in step by a test against mathjs/number. */
  export function createParse(parts: {
    typed: unknown
    numeric: unknown
    config: unknown
    [node: `${string}Node`]: unknown
  }): (text: string) => unknown
}

// mathjs parses and these nodes build trees while it does. They accept only what a Tree can say, so
// nothing else can be constructed, whatever the text.

/** What mathjs looks for to know a node of its own. */
class Node {
  declare readonly isNode: true
  constructor(readonly tree: Tree) {}
}
Object.defineProperty(Node.prototype, 'isNode', { value: true })

class SymbolNode extends Node {
  readonly isSymbolNode = true
  constructor(readonly name: string) {
    super({ kind: name.startsWith('n') ? 'name' : 'number', slot: Number(name.slice(1)) })
  }
}

class ParenthesisNode extends Node {
  constructor(content: Node) {
    super(content.tree)
  }
}

class OperatorNode extends Node {
  constructor(operator: string, _fn: string, of: readonly Node[]) {
    const trees = of.map(node => node.tree)
    super(
      operator === "'"
        ? { kind: 'percent', of: trees[0]! }
        : { kind: 'operation', operator: operatorFor(operator, trees.length), of: trees },
    )
  }
}

class FunctionNode extends Node {
  constructor(called: SymbolNode, of: readonly Node[]) {
    super({ kind: 'call', name: called.name as FunctionName, of: of.map(node => node.tree) })
  }
}

class ConditionalNode extends Node {
  constructor(test: Node, yes: Node, no: Node) {
    super({ kind: 'if', test: test.tree, yes: yes.tree, no: no.tree })
  }
}

class RelationalNode {
  constructor() {
    throw new ExpressionError({ code: 'comparedTwice' }, 0, 0)
  }
}

class RefusedNode {
  constructor() {
    throw new ExpressionError({ code: 'notAnExpression' }, 0, 0)
  }
}

const binary = new Set<string>(['+', '-', '*', '/', '^', '<', '<=', '>', '>=', '==', '!=', 'and', 'or'])
const unary = new Map<string, Operator>([
  ['-', 'neg'],
  ['+', 'pos'],
  ['not', 'not'],
])

function operatorFor(operator: string, operands: number): Operator {
  const known = operands === 1 ? unary.get(operator) : binary.has(operator) && (operator as Operator)
  if (!known) throw new RefusedNode()
  return known
}

/** Parses a text that `normalise` has passed. Throws ExpressionError. */
export const parseNormalised = createParse({
  // mathjs dispatches on the argument's type and adds a conversion from text to node; here it is always a text.
  typed: Object.assign((_name: string, signatures: { string: unknown }) => signatures.string, {
    addConversion() {},
  }),
  numeric: () => new RefusedNode(), // no digit begins a word of a normalised text
  config: {},
  SymbolNode,
  ParenthesisNode,
  OperatorNode,
  FunctionNode,
  ConditionalNode,
  RelationalNode,
  AccessorNode: RefusedNode,
  ArrayNode: RefusedNode,
  AssignmentNode: RefusedNode,
  BlockNode: RefusedNode,
  ConstantNode: RefusedNode,
  FunctionAssignmentNode: RefusedNode,
  IndexNode: RefusedNode,
  ObjectNode: RefusedNode,
  RangeNode: RefusedNode,
}) as (text: string) => Node
