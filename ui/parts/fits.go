package parts

import "sync"

// fitting is everything that the layout of a text depends on, beside the fonts,
// which never change.
type fitting struct {
	text       string
	ink        Ink
	size, w, h float32
}

// A laidOut keeps texts that were laid out. Measuring is most of the work of
// drawing a screen, and nearly every text of it was on the last one too.
type laidOut struct {
	mu   sync.Mutex
	seen map[fitting]Laid
}

// fitsKept is some twenty screens' worth of texts.
const fitsKept = 4096

var fits laidOut

// get is the layout of a text; it is shared, so nobody may change its lines.
func (f *laidOut) get(k fitting) Laid {
	f.mu.Lock()
	defer f.mu.Unlock()
	if l, ok := f.seen[k]; ok {
		return l
	}
	if f.seen == nil || len(f.seen) >= fitsKept {
		f.seen = make(map[fitting]Laid, fitsKept)
	}
	l := layOut(k.text, k.ink, k.size, k.w, k.h)
	f.seen[k] = l
	return l
}
