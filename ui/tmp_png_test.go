package ui

import (
	"image/png"
	"os"
)

func savePNG(w *window, name string) {
	f, _ := os.Create(name)
	png.Encode(f, w.picture())
	f.Close()
}
