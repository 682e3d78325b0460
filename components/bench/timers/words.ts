/** Of everything that goes on by itself. */
export const timerWords = {
  timers: 'Timers',
  timer: 'New timer',
  timerTitle: 'Minutes',
  timerName: (minutes: string): string => `${minutes} min`,
  over: (length: string): string => `over for ${length}`,
  overNow: 'over',
  since: (clock: string): string => `since ${clock}`,
  running: 'Timers that run',
  stop: (name: string): string => `Stop the timer ${name}`,
  stopShort: 'Stop',
  due: (clock: string): string => `at ${clock}`,
} as const

/** What this browser does and does not do while the bench is open. */
export const bellWords = {
  heading: 'This device',
  awake: 'The screen stays on while the bench is in sight.',
  notAwake: 'This browser does not keep the screen on. Set it to stay on in the device’s own settings.',
  sound: 'It rings when something is due.',
  soundLocked: 'It rings once you have touched this page.',
  noSound: 'This browser makes no sound here.',
  vibrates: 'It also vibrates where the device can.',
  noVibration: 'It does not vibrate in this browser.',
  closed: 'A closed page cannot ring. Opened again, it shows what was due meanwhile.',
  notifies: 'It notifies you while another page is in front.',
  notify: 'Notify me while another page is in front',
  blocked: 'Notifications are blocked for this page, in the settings of the browser.',
  noNotifications: 'This browser has no notifications for this page.',
  due: (what: string): string => `Now: ${what}`,
  over: (name: string): string => `Timer over: ${name}`,
} as const

/** Of timers that run out while another place of the app is open. */
export const elsewhereWords = {
  over: (name: string, bench: string, clock: string): string =>
    `Timer over since ${clock}: ${name}, at the bench of ${bench}.`,
  stop: 'Stop the timer',
  toBench: 'To the bench',
} as const
