package ui

import (
	"errors"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// asOfficer does what only an officer may: where a PIN is set it is asked first.
func (sh *Shell) asOfficer(what string, do func()) {
	has, err := sh.opts.Board.HasPIN()
	switch {
	case err != nil:
		sh.said = &said{trouble: inWords(err)}
		sh.refresh()
	case !has:
		do()
	default:
		sh.open(newPINPad(sh, what, words.L("The officer's PIN"), func(p *pinPad, pin string) {
			if err := sh.opts.Board.CheckPIN(pin); err != nil {
				p.again(pinWords(err))
				return
			}
			sh.back()
			do()
		}))
	}
}

// pinWords are the words for a PIN that was not taken.
func pinWords(err error) string {
	for _, known := range []error{board.ErrPIN, board.ErrPINShape, board.ErrPINWait} {
		if errors.Is(err, known) {
			return capital(words.Said(known.Error())) + "."
		}
	}
	t := inWords(err)
	return t.What + ". " + t.Safe + ". " + t.Do + "."
}

// openPIN sets the officer's PIN, or offers to change it or take it away.
func (sh *Shell) openPIN() {
	has, err := sh.opts.Board.HasPIN()
	switch {
	case err != nil:
		sh.said = &said{trouble: inWords(err)}
		sh.refresh()
	case !has:
		sh.newPIN("")
	default:
		sh.open(newRowList(words.L("Officer's PIN"), words.L("It is asked for what only an officer may do"), func(*now) []rowDo {
			return []rowDo{
				{parts.RowView{ID: "change-pin", Title: words.L("Change the PIN"), Tone: parts.Quiet, Go: "go"}, func() { sh.oldPIN(sh.newPIN) }},
				{parts.RowView{ID: "drop-pin", Title: words.L("Take the PIN away"), Second: words.L("then nothing asks for it"), Tone: parts.Quiet, Go: "go"},
					func() { sh.oldPIN(func(old string) { sh.putPIN(nil, old, "") }) }},
			}
		}, func(*now) (string, string) {
			return words.L("What it is for"), words.L(pinUse)
		}))
	}
}

// pinUse says what the PIN is for.
var pinUse = words.K("It is asked before a check is let pass, a search is stopped, a tag is taken off, a limit is changed or a scene is closed.\n" +
	"It keeps somebody else from signing as an officer. It is kept as a salted hash, never as it is.\n" +
	"So few digits do not keep out whoever has the file. A forgotten PIN is cleared at a desk: tarpline pin clear.")

// oldPIN asks for the PIN as it is, and goes on with it.
func (sh *Shell) oldPIN(then func(old string)) {
	sh.open(newPINPad(sh, words.L("Officer's PIN"), words.L("The PIN as it is now"), func(p *pinPad, pin string) {
		if err := sh.opts.Board.CheckPIN(pin); err != nil {
			p.again(pinWords(err))
			return
		}
		then(pin)
	}))
}

// newPIN asks for a new PIN twice.
func (sh *Shell) newPIN(old string) {
	sh.open(newPINPad(sh, words.L("Officer's PIN"), words.L("The new PIN, 4 to 8 digits"), func(p *pinPad, first string) {
		if len(first) < 4 {
			p.again(pinWords(board.ErrPINShape))
			return
		}
		sh.open(newPINPad(sh, words.L("Officer's PIN"), words.L("The new PIN once more"), func(p *pinPad, second string) {
			if second != first {
				p.again(words.L("The two were not the same. Nothing was changed; type the new PIN again, or go back."))
				return
			}
			sh.putPIN(p, old, second)
		}))
	}))
}

// putPIN keeps a new PIN, or with "" takes it away.
func (sh *Shell) putPIN(p *pinPad, old, pin string) {
	err := sh.opts.Board.SetPIN(old, pin)
	if err != nil && p != nil {
		p.again(pinWords(err))
		return
	}
	sh.over = nil
	if err != nil {
		sh.said = &said{trouble: inWords(err)}
	}
	sh.refresh()
}

// pinPad is a screen of digits over another. What is typed is not shown.
type pinPad struct {
	sh          *Shell
	title, ask  string
	typed, says string
	done        func(p *pinPad, pin string)
	out         *parts.Readout
	words       *parts.Label
	pad         *parts.DigitPad
	root        *fyne.Container
}

func newPINPad(sh *Shell, title, ask string, done func(p *pinPad, pin string)) *pinPad {
	p := &pinPad{sh: sh, title: title, ask: ask, done: done}
	p.out = parts.NewReadout(parts.ReadoutView{ID: "typed"})
	p.words = parts.NewLines(parts.LabelView{ID: "pin-words", Role: look.Sentence})
	p.pad = parts.NewDigitPad(p.key)
	says := padWords(p.words)
	p.root = box(func(size fyne.Size) { layPad(size, p.pad, p.out, says) }, p.pad, p.out, says)
	return p
}

// padWords is what stands beside a pad, on its panel.
func padWords(words *parts.Label) *parts.Panel {
	return parts.NewPanel(parts.PanelView{}, parts.NewScroller(words))
}

// layPad puts a pad at the left and what is typed, with its words and what
// else there is, at the right.
func layPad(size fyne.Size, pad, out, words fyne.CanvasObject, keys ...fyne.CanvasObject) {
	gap, row := look.U(look.Gap), look.U(look.Floor)
	padW := min(max(size.Width*0.42, look.U(3*look.Floor+2*look.Gap)), look.U(440))
	padH := size.Height
	place(pad, 0, 0, padW, padH)
	x := padW + gap
	w := size.Width - x
	place(out, x, 0, w, look.U(96))
	y := look.U(96) + gap
	end := padH
	for i := len(keys) - 1; i >= 0; i-- {
		end -= row
		place(keys[i], x, end, w, row)
		end -= gap
	}
	place(words, x, y, w, end-y)
}

func (p *pinPad) body() fyne.CanvasObject { return p.root }

func (p *pinPad) show(*now) head {
	out := parts.ReadoutView{ID: "typed", Text: strings.TrimSpace(strings.Repeat("* ", len(p.typed))), Tone: parts.Live, Role: look.Hand}
	text := parts.B(p.ask)
	if p.says != "" {
		text = parts.B(p.says) + "\n" + p.ask
	}
	if p.says != "" && p.typed == "" {
		out.Text, out.Tone, out.Role = words.L("Not taken"), parts.Alarm, look.Title
	}
	if p.title == words.L("Officer's PIN") {
		text += "\n\n" + words.L(pinUse)
	}
	p.out.Set(out)
	p.words.SetText(text)
	done := parts.Usual
	if len(p.typed) >= 4 {
		done = parts.Filled
	}
	p.pad.SetDone(done, len(p.typed) < 4)
	return head{title: p.title, sentence: p.ask, back: true}
}

func (p *pinPad) key(id string) {
	switch {
	case id == "done":
		p.done(p, p.typed)
		return
	case id == "delete":
		p.typed = p.typed[:max(len(p.typed)-1, 0)]
	case len(p.typed) < 8:
		p.typed, p.says = p.typed+id, ""
	}
	p.sh.refresh()
}

// again empties the pad and says why.
func (p *pinPad) again(why string) {
	p.typed, p.says = "", why
	p.sh.refresh()
}
