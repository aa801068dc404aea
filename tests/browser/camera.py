"""A picture as a camera writes it, and whether one was written afresh from it."""

from __future__ import annotations

from io import BytesIO

from PIL import Image

GPS, ORIENTATION, CAMERA = 0x8825, 0x0112, 0x010F
RED, BLUE = (200, 30, 30), (30, 30, 200)


def photograph() -> bytes:
    """A picture as a camera writes it: lying on its side, with place and camera in it. Upright, its top is red."""
    image = Image.new("RGB", (2400, 1200), RED)
    image.paste(BLUE, (1200, 0, 2400, 1200))
    exif = image.getexif()
    exif[ORIENTATION] = 6  # what is left in the file is the top
    exif[CAMERA] = "Some camera"
    exif.get_ifd(GPS).update({1: "N", 2: (51.0, 28.0, 38.0), 3: "W", 4: (0.0, 0.0, 5.0)})
    out = BytesIO()
    image.save(out, "JPEG", exif=exif)
    return out.getvalue()


def written_afresh(data: bytes) -> None:
    """It is the picture of `photograph`, upright and scaled, and holds nothing of what the camera wrote beside it."""
    assert Image.open(BytesIO(photograph())).getexif().get_ifd(GPS), "there was a place in it"
    image = Image.open(BytesIO(data))
    assert (image.format, image.size) == ("JPEG", (800, 1600))
    assert not dict(image.getexif())
    assert not any(word in data for word in (b"Exif", b"GPS", b"Some camera", b"http"))
    upright = image.convert("RGB")
    for at, colour in (((400, 200), RED), ((400, 1400), BLUE)):
        found = upright.getpixel(at)
        assert isinstance(found, tuple)
        assert max(abs(a - b) for a, b in zip(found, colour, strict=True)) < 12, at
