import type { Formula } from '../document/formula.js'
import type { Transaction, Workbook } from '../document/workbook.js'

/** An edit with what it changes besides in formulas that have a build of it. May throw Refusal. */
export type FollowBuilds = (workbook: Workbook, edit: Transaction) => Transaction

let follow: FollowBuilds | undefined

/** Gives to all who ask what carries a change of a build to the formulas that have it. */
export const useBuilds = (given: FollowBuilds): void => {
  follow = given
}

/** Whether it is there yet. Until then nobody is to edit a workbook that has builds. */
export const areBuildsFollowed = (): boolean => follow !== undefined

export const hasBuilds = ({ stages }: Pick<Formula, 'stages'>): boolean => stages.some(s => s.build)

/** The edit as it reaches all formulas that share a build with one that it changes. */
export const followBuilds: FollowBuilds = (workbook, edit) => follow?.(workbook, edit) ?? edit
