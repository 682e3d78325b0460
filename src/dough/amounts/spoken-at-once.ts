import { readSpoken } from './spoken.js'
import { useSpoken } from './spoken-reader.js'

useSpoken(readSpoken)
