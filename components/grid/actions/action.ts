/** One entry of a row's menu. */
export interface Action {
  readonly label: string
  readonly run: () => void
  readonly keys?: string // that do the same
  readonly checked?: boolean // one of several ways, and whether it is this one
  readonly apart?: true // a rule before it
}
