"""Puts numbered PNG frames into one moving WebP: `moving_picture.py FRAMES OUT`.

The frames are those that `npm run moving` (tests/browser) takes of the page. Their names end in how long each stands, ms: `012-125.png`.
"""

import sys
from pathlib import Path

from PIL import Image

SIDE_PX = 440
QUALITY = 58
MOST_BYTES = 1_500_000


def main(folder: str, out: str) -> None:
    files = sorted(Path(folder).glob("*.png"))
    if len(files) < 2:
        sys.exit(f"there are no frames in {folder}")
    durations = [int(file.stem.split("-")[1]) for file in files]
    frames = []
    for file in files:
        with Image.open(file) as picture:
            height = round(SIDE_PX * picture.height / picture.width)
            frames.append(picture.convert("RGB").resize((SIDE_PX, height), Image.Resampling.LANCZOS))
    frames[0].save(out, save_all=True, append_images=frames[1:], duration=durations, loop=0, quality=QUALITY, method=6)
    size = Path(out).stat().st_size
    if size > MOST_BYTES:
        sys.exit(f"{out} has {size} bytes: {MOST_BYTES} are allowed")
    print(f"{out}: {len(frames)} frames, {sum(durations) / 1000:.1f} s, {size} bytes")


if __name__ == "__main__":
    main(*sys.argv[1:])
