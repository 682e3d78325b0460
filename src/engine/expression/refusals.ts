/** Why a text is not an expression Tarebook accepts. Parts of an expression are given as they are written. */
export type ExpressionDiagnostic =
  // The text and its tokens.
  | { readonly code: 'nothingWritten' | 'notAnExpression' | 'comparedTwice' }
  | { readonly code: 'tooManyCharacters' | 'tooManyParts' | 'tooDeep'; readonly most: number }
  | { readonly code: 'numberInTwoWays'; readonly typed: string; readonly readings: readonly string[] }
  | { readonly code: 'numberTooLarge'; readonly typed: string }
  | { readonly code: 'symbolWithoutMeaning'; readonly symbol: string; readonly at: number } // 0-based
  // What stands beside what.
  | { readonly code: 'missingAfter' | 'missingBefore'; readonly token: string }
  | { readonly code: 'neverClosed' | 'closesNothing' | 'percentWithoutNumber' | 'percentTwice' }
  | { readonly code: 'colonWithoutTest' | 'testWithoutColon' | 'commaIsDecimal' }
  | { readonly code: 'callOfNothing'; readonly call: string }
  | { readonly code: 'tooManyArguments'; readonly call: string; readonly most: number }
  | { readonly code: 'unknownFunction'; readonly name: string; readonly known: readonly string[] }
  | { readonly code: 'pointWanted'; readonly number: string } // with its point
  | { readonly code: 'separatesInCalls'; readonly separator: string }
  | { readonly code: 'percentNotRemainder'; readonly product?: string } // what may have been meant
  | {
      readonly code: 'notAUnit'
      readonly number: string
      readonly word: string
      readonly units: readonly string[]
    }
  | { readonly code: 'spaceInNumber' | 'operatorMissing'; readonly first: string; readonly second: string }
  | { readonly code: 'twoPoints'; readonly name: string }
  | { readonly code: 'dividesByZero'; readonly over: string; readonly under: string }
  // What it measures.
  | { readonly code: 'weightWithUnit'; readonly part: string; readonly unit: string }
  | {
      readonly code: 'percentIsOfBase'
      readonly share: string
      readonly of: string
      readonly number: string
    }
  | { readonly code: 'weightTimesWeight'; readonly first: string; readonly second: string }
  | { readonly code: 'numberOverWeight'; readonly number: string; readonly weight: string }
  | { readonly code: 'powerOfWeight' | 'percentOfWeight'; readonly part: string }
  | { readonly code: 'notACondition' | 'conditionAsAmount'; readonly part: string }
  | { readonly code: 'notAPlainNumber'; readonly part: string; readonly as: 'decimal places' | 'exponent' }
  | {
      readonly code: 'conditionAmongAmounts'
      readonly where?: string // left out: a choice
      readonly condition: string
      readonly other: string
    }
  | {
      readonly code: 'numberAmongWeights'
      readonly where?: string // left out: a choice
      readonly number: string
      readonly weight: string
      readonly isWritten: boolean // as a number alone, not as a name or a calculation
    }
  // What follows from it backwards.
  | {
      readonly code: 'cannotWorkBackwards'
      readonly of: 'condition' | 'product' | 'division' | 'power' | 'call'
      readonly call: string // `max(…)`; '' for the others
      readonly names: readonly string[]
      readonly part: string
    }
