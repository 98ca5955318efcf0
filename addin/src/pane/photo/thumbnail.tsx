import { useEffect, useRef, useState } from 'preact/hooks'
import type { PhotoKeeper } from '../../host/host.js'

const LONGEST_PX = 160

/** A kept photo, drawn small: a canvas needs no address that the page's policy would have to allow. */
export function Thumbnail({ photos, name, of }: { photos: PhotoKeeper; name: string; of: string }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const [missing, setMissing] = useState(false)
  useEffect(() => {
    let shown = true
    void draw(photos, name, canvas.current).then(
      (found) => shown && setMissing(!found),
      () => shown && setMissing(true),
    )
    return () => {
      shown = false
    }
  }, [photos, name])
  return (
    <span class="thumbnail" data-photo={name}>
      <canvas ref={canvas} hidden={missing} width="1" height="1" role="img" aria-label={`Photo of ${of}`} />
      <span class="hint">{missing ? `${name}: the picture is not kept here` : name}</span>
    </span>
  )
}

async function draw(photos: PhotoKeeper, name: string, canvas: HTMLCanvasElement | null): Promise<boolean> {
  const bytes = await photos.read(name)
  if (!bytes || !canvas) return bytes !== undefined
  const picture = await createImageBitmap(new Blob([Uint8Array.from(bytes)], { type: 'image/jpeg' }))
  const scale = Math.min(1, LONGEST_PX / Math.max(picture.width, picture.height))
  canvas.width = Math.round(picture.width * scale)
  canvas.height = Math.round(picture.height * scale)
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height)
  picture.close()
  return true
}
