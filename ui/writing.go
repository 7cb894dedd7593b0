package ui

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// wordPad is a screen of letters over another.
type wordPad struct {
	sh          *Shell
	title, text string
	most        int
	out         *parts.Readout
	words       *parts.Label
	pad         *parts.LetterPad
	root        *fyne.Container
}

// newWordPad writes a text of at most so many letters, beginning with start.
func newWordPad(sh *Shell, title, start string, most int, done func(string)) *wordPad {
	p := &wordPad{sh: sh, title: title, text: start, most: most}
	p.out = parts.NewReadout(parts.ReadoutView{ID: "typed"})
	p.words = parts.NewLines(parts.LabelView{ID: "word-words", Role: look.Lead})
	p.pad = parts.NewLetterPad(func(s string) {
		if len([]rune(p.text)) < most {
			p.text += s
		}
		sh.refresh()
	}, func() {
		if r := []rune(p.text); len(r) > 0 {
			p.text = string(r[:len(r)-1])
		}
		sh.refresh()
	}, func() { done(strings.TrimSpace(p.text)) })
	p.root = box(func(size fyne.Size) {
		gap, row := look.U(look.Gap), look.U(look.Floor)
		padH := 4*row + 3*gap
		place(p.pad, 0, size.Height-padH, size.Width, padH)
		place(p.out, 0, 0, size.Width, row)
		place(p.words, 0, row+gap, size.Width, size.Height-padH-row-2*gap)
	}, p.out, p.words, p.pad)
	return p
}

func (p *wordPad) body() fyne.CanvasObject { return p.root }

func (p *wordPad) show(*now) head {
	role := look.Place
	if len(p.text) > 24 {
		role = look.Lead
	}
	p.out.Set(parts.ReadoutView{ID: "typed", Text: p.text, Tone: parts.Live, Role: role})
	p.words.SetText(words.F("%d of at most %d letters. Never a person's name or condition.", len([]rune(p.text)), p.most))
	return head{title: p.title, sentence: words.L("Done ends writing; Back leaves it as it was"), back: true, letters: true}
}

// numberPad is a screen of digits over another.
type numberPad struct {
	sh           *Shell
	title, typed string
	blank        bool // may be left empty
	done         func(k int)
	out          *parts.Readout
	words        *parts.Label
	pad          *parts.DigitPad
	root         *fyne.Container
}

// newNumberPad types a whole number; an empty one, where it may be, is
// [model.Blank].
func newNumberPad(sh *Shell, title, words string, blank bool, done func(k int)) *numberPad {
	p := &numberPad{sh: sh, title: title, blank: blank, done: done}
	p.out = parts.NewReadout(parts.ReadoutView{ID: "typed"})
	p.words = parts.NewLines(parts.LabelView{ID: "number-words", Role: look.Sentence, Text: words})
	p.pad = parts.NewDigitPad(p.key)
	says := padWords(p.words)
	p.root = box(func(size fyne.Size) { layPad(size, p.pad, p.out, says) }, p.pad, p.out, says)
	return p
}

func (p *numberPad) body() fyne.CanvasObject { return p.root }

func (p *numberPad) show(*now) head {
	text := p.typed
	if text == "" && p.blank {
		text = words.L("all")
	}
	p.out.Set(parts.ReadoutView{ID: "typed", Text: text, Tone: parts.Live})
	p.pad.SetDone(parts.Filled, p.typed == "" && !p.blank)
	return head{title: p.title, sentence: words.L("The tick ends typing; Back leaves it as it was"), back: true}
}

func (p *numberPad) key(id string) {
	switch {
	case id == "done":
		k, err := strconv.Atoi(p.typed)
		if err != nil {
			k = model.Blank
		}
		p.done(k)
		return
	case id == "delete":
		p.typed = p.typed[:max(len(p.typed)-1, 0)]
	case len(p.typed) < 4:
		p.typed += id
	}
	p.sh.refresh()
}
