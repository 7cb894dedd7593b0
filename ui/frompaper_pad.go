package ui

import (
	"fyne.io/fyne/v2"

	"tarpside/model/tarpsheet"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// paperPad asks for a cell that is made of figures.
type paperPad struct {
	title, ask string
	says       string // beside the pad
	typed      string
	most       int
	shown      func(typed string) string
	right      func(typed string) bool
	done       func(typed string)
	sh         *Shell
	out        *parts.Readout
	words      *parts.Label
	pad        *parts.DigitPad
	keys       []*parts.Key
	root       *fyne.Container
}

// paperAnswer is a key that stands for a cell without figures.
type paperAnswer struct{ id, title, cell string }

func newPaperPad(p *paperPad, answers ...paperAnswer) *paperPad {
	p.out = parts.NewReadout(parts.ReadoutView{ID: "typed"})
	p.words = parts.NewLines(parts.LabelView{ID: "paper-words", Role: look.Sentence})
	says := padWords(p.words)
	p.pad = parts.NewDigitPad(p.key)
	var keys []fyne.CanvasObject
	for _, a := range answers {
		k := parts.NewKey(parts.KeyView{ID: a.id, Title: a.title, Lay: parts.LayLeft}, func() { p.done(a.cell) })
		p.keys = append(p.keys, k)
		keys = append(keys, k)
	}
	p.root = box(func(size fyne.Size) { layPad(size, p.pad, p.out, says, keys...) }, append([]fyne.CanvasObject{p.pad, p.out, says}, keys...)...)
	return p
}

func (p *paperPad) body() fyne.CanvasObject { return p.root }

func (p *paperPad) show(*now) head {
	p.out.Set(parts.ReadoutView{ID: "typed", Text: p.shown(p.typed), Tone: parts.Live, Role: look.Hand})
	p.words.SetText(p.says)
	tone, ok := parts.Usual, p.right(p.typed)
	if ok {
		tone = parts.Filled
	}
	p.pad.SetDone(tone, !ok)
	return head{title: p.title, sentence: p.ask, back: true}
}

func (p *paperPad) key(id string) {
	switch {
	case id == "done":
		p.done(p.shown(p.typed))
		return
	case id == "delete":
		p.typed = p.typed[:max(len(p.typed)-1, 0)]
	case len(p.typed) < p.most:
		p.typed += id
	}
	p.sh.refresh()
}

// newPaperTime asks for the time as a clock shows it.
func newPaperTime(f *fromPaper) screen {
	p := &paperPad{sh: f.sh, title: words.L("Time on paper"), ask: words.L("Hours and minutes, as they were written"), most: 4}
	n := f.sh.now()
	p.says = words.F("19:40 is 1, 9, 4, 0.\n\nThe scene began at %s; it is %s now.", n.clock(n.scene.Opened), n.at.Format("15:04"))
	p.right = func(typed string) bool {
		return len(typed) >= 3 && typed[len(typed)-2] < '6' && (len(typed) == 3 || typed[:2] < "24")
	}
	p.shown = func(typed string) string {
		switch {
		case len(typed) < 3:
			return typed
		case len(typed) == 3 && !p.right(typed): // the last figure is yet to come
			return typed[:2] + ":" + typed[2:] + "_"
		}
		return typed[:len(typed)-2] + ":" + typed[len(typed)-2:]
	}
	p.done = func(cell string) {
		f.line.Time = cell
		f.then(newPaperPiece(f))
	}
	answers := []paperAnswer{{"unreadable", words.L("Cannot be read"), tarpsheet.Unknown}}
	if len(f.lines) > 0 {
		last := f.lines[len(f.lines)-1].Time
		answers = append(answers, paperAnswer{"same-time", words.F("As the line before: %s", paperTime(last)), last})
	}
	return newPaperPad(p, answers...)
}

// newPaperNumber asks how many.
func newPaperNumber(f *fromPaper) screen {
	p := &paperPad{sh: f.sh, title: words.L("How many"), ask: f.sh.now().itemName(f.line.Piece), most: 4}
	if it := f.sh.now().d.Item(f.line.Piece); it != nil {
		p.says = words.F("%s has %d of them.", f.sh.now().rigName(it.Rig), it.Quantity)
	}
	p.shown = func(typed string) string { return typed }
	p.right = func(typed string) bool { return typed != "" && typed[0] != '0' }
	p.done = func(cell string) {
		f.line.Quantity = cell
		f.then(newPaperWhere(f))
	}
	return newPaperPad(p, paperAnswer{"unreadable", words.L("Cannot be read"), tarpsheet.Unknown})
}
