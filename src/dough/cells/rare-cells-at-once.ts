import { writeAllOf } from './all-of-cells.js'
import { writeHolds } from './hold-cells.js'
import { useRareCells } from './rare-cells.js'

useRareCells({ holds: writeHolds, allOf: writeAllOf })
