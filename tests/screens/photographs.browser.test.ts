import '../../components/bakes/photographs/tb-photographs'
import '../../components/bakes/photographs/tb-photographs-left'
import { preparePicture, within } from '../../components/bakes/photographs/prepared-picture'
import type { TbPhotographs } from '../../components/bakes/photographs/tb-photographs'
import { databasePhotographs } from '../../src/storage/photographs/photographs'
import { deepEqual, equal, ok, waitUntil } from '../assert'
import { press, type } from '../keys'
import { itOnce } from '../once'
import { passesAxeInBoth } from './mount'

/** A picture of noise, so that it is large as a file; its left half dark, its right half light. */
async function jpeg(width: number, height: number): Promise<Blob> {
  const canvas = document.createElement('canvas')
  Object.assign(canvas, { width, height })
  const context = canvas.getContext('2d')!
  const image = context.createImageData(width, height)
  for (let i = 0, state = 1; i < image.data.length; i += 4) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    const dark = (i / 4) % width < width / 2 ? 0 : 128
    image.data.set([dark + (state >>> 25), dark + ((state >>> 17) & 127), dark, 255], i)
  }
  context.putImageData(image, 0, 0)
  return new Promise(resolve => canvas.toBlob(blob => resolve(blob!), 'image/jpeg', 0.95))
}

/** The same as a camera writes it: to be turned a quarter to the right, taken somewhere north. */
async function fromACamera(picture: Blob): Promise<Blob> {
  const text = (words: string) => [...words].map(letter => letter.charCodeAt(0))
  const two = (value: number) => [value >> 8, value & 255]
  const four = (value: number) => [0, 0, ...two(value)]
  const tiff = [
    ...[...text('MM'), 0, 42, ...four(8), ...two(2)],
    ...[...two(0x0112), ...two(3), ...four(1), ...two(6), 0, 0], // orientation 6
    ...[...two(0x8825), ...two(4), ...four(1), ...four(38)], // where its place is
    ...four(0),
    ...[...two(1), ...two(1), ...two(2), ...four(2), ...text('N'), 0, 0, 0], // latitude: north
    ...four(0),
  ]
  const exif = [...text('Exif'), 0, 0, ...tiff, ...text('PLACE47N')]
  const bytes = new Uint8Array(await picture.arrayBuffer())
  const segment = new Uint8Array([0xff, 0xe1, ...two(exif.length + 2), ...exif])
  return new Blob([bytes.slice(0, 2), segment, bytes.slice(2)], { type: 'image/jpeg' })
}

const lettersOf = async (blob: Blob): Promise<string> =>
  new TextDecoder('latin1').decode(await blob.arrayBuffer())

describe('Photographs of a bake', () => {
  it('one of a camera is turned upright, no larger than is kept, and tells nothing of where it was taken', async () => {
    const taken = await fromACamera(await jpeg(2000, 1200))
    ok(/Exif/.test(await lettersOf(taken)), 'the camera wrote into it')
    const { picture, width, height } = await preparePicture(taken)
    equal(`${Math.max(width, height) <= 1600} ${(height / width).toFixed(2)}`, 'true 1.67')
    ok(picture.size <= 400_000, `${picture.size} bytes`)
    equal(picture.type, 'image/jpeg')
    ok(!/Exif|GPS|PLACE47N/.test(await lettersOf(picture)), 'nothing of it is left')
    const shown = await createImageBitmap(picture)
    deepEqual([shown.width, shown.height], [width, height])
    const canvas = document.createElement('canvas')
    Object.assign(canvas, { width: 2, height: 2 })
    const context = canvas.getContext('2d')!
    context.drawImage(shown, 0, 0, 2, 2)
    const light = (x: number, y: number) => context.getImageData(x, y, 1, 1).data[0]!
    ok(light(0, 0) < light(0, 1) - 40 && light(1, 0) < light(1, 1) - 40, 'what was left is above')
  })

  itOnce('a picture is made no larger than it is, nor than is kept', () => {
    deepEqual(within(800, 600, 1600), { width: 800, height: 600 })
    deepEqual(within(4000, 3000, 1600), { width: 1600, height: 1200 })
    deepEqual(within(10, 9000, 1600), { width: 2, height: 1600 })
  })

  describe('on the page', () => {
    const run = Date.now()
    const store = databasePhotographs('tarebook')
    let photographs: TbPhotographs
    const find = (selector: string) => photographs.shadowRoot!.querySelector<HTMLElement>(selector)
    const inDialog = (selector: string) =>
      find('tb-photograph')!.shadowRoot!.querySelector<HTMLElement>(selector)
    const choose = (file: File) => {
      const input = find('input[multiple]') as HTMLInputElement
      const files = new DataTransfer()
      files.items.add(file)
      input.files = files.files
      input.dispatchEvent(new Event('change'))
    }

    before(async () => {
      photographs = document.createElement('tb-photographs')
      photographs.bake = `bake-${run}`
      document.body.append(photographs)
      await photographs.updateComplete
      choose(new File([await fromACamera(await jpeg(900, 700))], 'crumb.jpg', { type: 'image/jpeg' }))
      await waitUntil(() => find('li img'), 'it is shown')
    })
    after(async () => {
      photographs.remove()
      await store.removeOf(`bake-${run}`)
      store.close()
    })

    it('a file that is chosen is kept under keys of its own, and shown', async () => {
      const [kept] = await store.of(`bake-${run}`)
      deepEqual([kept!.width, kept!.height], [700, 900])
      ok(!/Exif/.test(await lettersOf((await store.picture(kept!))!)), 'without what the camera wrote')
    })

    it('what is no picture is refused in a sentence, and nothing else is lost', async () => {
      choose(new File(['no picture'], 'note.jpg', { type: 'image/jpeg' }))
      await waitUntil(() => find('.fault')?.textContent?.includes('note.jpg'), 'it is said')
      equal((await store.of(`bake-${run}`)).length, 1)
    })

    it('where the storage is nearly full it is not kept, which is said, and nothing else is lost', async () => {
      const estimate = navigator.storage.estimate
      // Room for it, and not for the workbook besides
      navigator.storage.estimate = async () => ({ quota: 100e6, usage: 80e6 })
      choose(new File([await jpeg(300, 200)], 'late.jpg', { type: 'image/jpeg' }))
      await waitUntil(() => /nearly full.*not kept/.test(find('.fault')?.textContent ?? ''), 'it is said')
      navigator.storage.estimate = estimate
      equal((await store.of(`bake-${run}`)).length, 1)
      equal(photographs.renderRoot.querySelectorAll('li img').length, 1)
    })

    itOnce('it passes axe', () => passesAxeInBoth(photographs))

    it('looked at large it is described, which names it for readers', async () => {
      find('li button')!.focus()
      await press('Enter')
      await waitUntil(() => inDialog('img'), 'it is large')
      const field = await waitUntil(
        () => inDialog('tb-grow')?.shadowRoot?.querySelector('textarea'),
        'there is a field',
      )
      field.focus()
      await type('Open crumb')
      await press('Enter')
      await waitUntil(() => inDialog('img')?.getAttribute('alt') === 'Open crumb', 'it is called so')
      await waitUntil(
        () => find('li button')?.getAttribute('aria-label') === 'Look at: Open crumb',
        'small as well',
      )
    })

    it('where its bake is no more it can be deleted all the same', async () => {
      const left = document.createElement('tb-photographs-left')
      left.bakes = [{ id: 'another' }]
      document.body.append(left)
      const said = () => left.shadowRoot!.querySelector('p')?.textContent ?? ''
      await waitUntil(
        () => /of a bake that was deleted|of bakes that were deleted/.test(said()),
        'it is told',
      )
      left.bakes = [{ id: `bake-${run}` }]
      await waitUntil(() => said() === '', 'it is not, where the bake is there')
      left.remove()
    })

    it('deleted, it is gone from the storage', async () => {
      inDialog('footer button')!.focus()
      await press('Enter')
      await waitUntil(() => inDialog('footer [role=alert]'), 'it is asked')
      inDialog('footer button.lined')!.focus()
      await press('Enter')
      await waitUntil(() => !find('li'), 'it is not shown any more')
      deepEqual(await store.of(`bake-${run}`), [])
    })
  })
})
