import '../outline/all-taken.js'
import '../weighed/weighed-batch.js'
import { writeAllOf } from './all-of-cells.js'
import { writeHolds } from './hold-cells.js'
import { useRareCells } from './rare-cells.js'
import { writeScale } from './scale-cells.js'

useRareCells({ holds: writeHolds, scale: writeScale, allOf: writeAllOf })
