/** What of rings and of keeping awake there is in this browser. */
export interface BellState {
  readonly sound: 'ready' | 'locked' | 'none'
  readonly vibrates: boolean
  readonly awake: boolean
  readonly notifies: 'granted' | 'default' | 'denied' | 'none'
}

const pulses = [0, 0.28, 0.56, 1.2, 1.48, 1.76] // seconds at which a ring sounds

/** Rings, vibrates, notifies and keeps the screen awake, where the browser allows. Nothing is asked for before it is wanted. */
export class Bell {
  readonly #changed: () => void
  #sound: AudioContext | undefined
  #lock: WakeLockSentinel | undefined
  #gone = new AbortController()

  constructor(changed: () => void) {
    this.#changed = changed
  }

  get state(): BellState {
    return {
      sound: 'AudioContext' in window ? (this.#sound?.state === 'running' ? 'ready' : 'locked') : 'none',
      vibrates: 'vibrate' in navigator,
      awake: this.#lock !== undefined && !this.#lock.released,
      notifies: 'Notification' in window ? Notification.permission : 'none',
    }
  }

  /** Keeps the screen on unless it need not, and makes ready to sound with the first touch or key. */
  begin(keepsAwake = true): void {
    this.#gone = new AbortController()
    const { signal } = this.#gone
    for (const touch of ['pointerdown', 'keydown'])
      addEventListener(touch, () => void this.#unlock(), { signal, passive: true })
    if (!keepsAwake) return
    document.addEventListener('visibilitychange', () => void this.#stayAwake(), { signal })
    void this.#stayAwake()
  }

  end(): void {
    this.#gone.abort()
    void this.#lock?.release().catch(() => {})
    this.#lock = undefined
    void this.#sound?.close().catch(() => {})
    this.#sound = undefined
  }

  async #stayAwake(): Promise<void> {
    if (document.visibilityState !== 'visible' || !('wakeLock' in navigator) || this.state.awake) return
    try {
      const lock = await navigator.wakeLock.request('screen')
      if (this.#gone.signal.aborted) return void lock.release()
      this.#lock = lock
      lock.addEventListener('release', this.#changed)
    } catch {
      this.#lock = undefined // with little charge left, say
    }
    this.#changed()
  }

  async #unlock(): Promise<void> {
    if (!('AudioContext' in window) || this.#sound?.state === 'running') return
    try {
      this.#sound ??= new AudioContext()
      await this.#sound.resume()
    } catch {
      return // no sound device
    }
    this.#changed()
  }

  /** Asks whether it may notify; to be called when the baker presses for it. */
  async askToNotify(): Promise<void> {
    try {
      await Notification.requestPermission()
    } catch {
      // Then it stays as it is.
    }
    this.#changed()
  }

  /** Rings for what is due; where the page is not in sight it notifies, if it may. */
  ring(words: string): void {
    this.#tone()
    if ('vibrate' in navigator) navigator.vibrate([400, 150, 400, 150, 400])
    if (document.visibilityState === 'visible' && document.hasFocus()) return
    if (this.state.notifies === 'granted') void this.#notify(words)
  }

  #tone(): void {
    const sound = this.#sound
    if (sound?.state !== 'running') return
    for (const at of pulses) {
      const from = sound.currentTime + at
      const tone = sound.createOscillator()
      const loud = sound.createGain()
      tone.frequency.value = 880
      loud.gain.setValueAtTime(0, from)
      loud.gain.linearRampToValueAtTime(0.5, from + 0.02)
      loud.gain.linearRampToValueAtTime(0, from + 0.2)
      tone.connect(loud).connect(sound.destination)
      tone.start(from)
      tone.stop(from + 0.22)
    }
  }

  async #notify(words: string): Promise<void> {
    try {
      // Chromium on Android shows them through the offline worker only, and throws otherwise.
      const worker = await navigator.serviceWorker?.getRegistration()
      if (worker) await worker.showNotification(words, { tag: 'bench' })
      else new Notification(words, { tag: 'bench' })
    } catch {
      // It has rung all the same.
    }
  }
}
