package look

import (
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Face is the file of letters that a text is set from, nil where the toolkit
// is to look for one. For a text in Latin, Greek or Cyrillic letters, as nearly
// all are, it is the face that the toolkit embeds, by itself: the pictures of
// emoji and the fonts of the machine are read only for a text that needs them.
func Face(text string, style fyne.TextStyle) fyne.Resource {
	for _, r := range text {
		if r >= firstStrange && (r < dashes || r > lastDash) {
			return nil
		}
	}
	if style.Bold {
		return theme.DefaultTextBoldFont()
	}
	return theme.DefaultTextFont()
}

// The embedded face has all letters before Hebrew, and the dashes, quotation
// marks and the ellipsis of General Punctuation.
const (
	firstStrange = '\u0530'
	dashes       = '\u2010'
	lastDash     = '\u2026'
)

// Measure is the size of a text in a size and style. Sizes are kept: the fonts
// never change, and most words of a screen were on the last one too.
func Measure(text string, size float32, style fyne.TextStyle) fyne.Size {
	k := measure{text, size, style}
	measured.Lock()
	s, ok := measured.seen[k]
	measured.Unlock()
	if ok {
		return s
	}
	s, _ = fyne.CurrentApp().Driver().RenderedTextSize(text, size, style, Face(text, style))
	measured.Lock()
	defer measured.Unlock()
	if measured.seen == nil || len(measured.seen) >= measuredKept {
		measured.seen = make(map[measure]fyne.Size)
	}
	measured.seen[k] = s
	return s
}

type measure struct {
	text  string
	size  float32
	style fyne.TextStyle
}

// measuredKept is some hundred screens' worth of words.
const measuredKept = 32768

var measured struct {
	sync.Mutex
	seen map[measure]fyne.Size
}
