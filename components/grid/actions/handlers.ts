import { commandOf, isRightToLeft } from '../moving/key-map.js'
import type { Handlers } from '../paint/frame.js'
import type { CommandsContext } from './commands.js'
import { Focus } from './focus.js'
import { Pointers } from './pointers.js'

/** What the grid's events come to: while an editor is open they are its field's. */
export function handlersOf(context: CommandsContext): Handlers {
  const { grid, elements, session, commands, rowCommands } = context
  const focus = new Focus(context)
  const pointers = new Pointers(context)
  return {
    keydown: event => {
      if (session.state && event.target === elements.field) return session.key(event)
      if (event.target instanceof Element && event.target.matches('.define')) return
      const command = commandOf(event, isRightToLeft(grid))
      if (command && commands.run(command, event)) event.preventDefault()
    },
    input: () => session.input(),
    beforeInput: event => session.state || commands.beforeInput(event),
    pointerDown: pointers.pointerDown,
    mouseDown: pointers.mouseDown,
    click: pointers.click,
    doubleClick: pointers.doubleClick,
    focusIn: focus.comes,
    focusOut: focus.goes,
    addStage: () => rowCommands.addStage(),
  }
}
