import '../amounts/spoken-at-once.js'
import '../outline/all-taken.js'
import './all-of-batch.js'
import { writeScale } from './scale-cells.js'
import { useScale } from './scale-writer.js'

useScale(writeScale)
