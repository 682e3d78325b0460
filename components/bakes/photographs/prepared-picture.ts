export const mostPixels = 1600 // of its longer side
export const mostBytes = 400_000

/** A picture as it is kept. */
export interface Prepared {
  readonly picture: Blob // JPEG
  readonly width: number
  readonly height: number
}

/** Width and height so that neither is above `most`, in the same proportion. */
export function within(width: number, height: number, most: number): { width: number; height: number } {
  const part = Math.min(1, most / Math.max(width, height))
  return { width: Math.max(1, Math.round(width * part)), height: Math.max(1, Math.round(height * part)) }
}

const qualities = [0.86, 0.78, 0.68, 0.56]
const smaller = 0.8

/**
 * Turns a picture upright as its camera says, makes it no larger than is kept, and draws it anew: of what a camera wrote into the
 * file, such as where it was taken, nothing is left. Rejects for what is no picture that this browser can show.
 */
export async function preparePicture(file: Blob): Promise<Prepared> {
  const { image, ...size } = await pictureIn(file)
  try {
    for (let most = mostPixels; most > 100; most = Math.floor(most * smaller)) {
      const { width, height } = within(size.width, size.height, most)
      const canvas = document.createElement('canvas')
      canvas.width = width
      canvas.height = height
      const context = canvas.getContext('2d')!
      context.fillStyle = 'white' // what can be seen through
      context.fillRect(0, 0, width, height)
      context.imageSmoothingQuality = 'high'
      context.drawImage(image, 0, 0, width, height)
      for (const quality of qualities) {
        const picture = await jpegOf(canvas, quality)
        if (picture.size <= mostBytes) return { picture, width, height }
      }
    }
  } finally {
    if (image instanceof ImageBitmap) image.close()
  }
  throw new Error('The picture could not be made small enough.')
}

/** What a file shows, upright. Where no bitmap can be made of it, as of some files in Firefox, an image of the page may show it. */
async function pictureIn(file: Blob) {
  try {
    const image = await createImageBitmap(file, { imageOrientation: 'from-image' })
    return { image, width: image.width, height: image.height }
  } catch {
    const image = new Image()
    image.src = URL.createObjectURL(file)
    try {
      await image.decode()
      return { image, width: image.naturalWidth, height: image.naturalHeight }
    } finally {
      URL.revokeObjectURL(image.src)
    }
  }
}

const jpegOf = (canvas: HTMLCanvasElement, quality: number): Promise<Blob> =>
  new Promise((resolve, reject) =>
    canvas.toBlob(
      blob => (blob ? resolve(blob) : reject(new Error('The picture could not be drawn.'))),
      'image/jpeg',
      quality,
    ),
  )
