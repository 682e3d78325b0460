export {
  type FormulasRead,
  readFormulas,
  type WriteOptions,
  type WrittenFigures,
  writeFormulas,
} from './csv.js'
