import type { Damage } from './record/damage.js'
import { damageProblem } from './record/words.js'
import type { KeptReason } from './state.js'

/** What a keeper has to tell of what it read. */
export type KeeperNews = Damage | KeptReason

export const newsInWords = (news: KeeperNews): string =>
  'message' in news ? news.message : damageProblem(news).message
