import { useExpressionWords } from './expression-problem.js'
import { expressionInWords } from './expression-words.js'
import { readSpoken } from './spoken.js'
import { useSpoken } from './spoken-reader.js'

useSpoken(readSpoken)
useExpressionWords(expressionInWords)
