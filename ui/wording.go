package ui

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/board"
	"tarpside/model"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// wording is a screen on which a few words are typed with letters of our own.
type wording struct {
	sh          *Shell
	title, line string
	ask         string // stands where the words will
	text        string
	out         *parts.Readout
	words       *parts.Label
	root        *fyne.Container
	done        func(text string)
}

// newWording asks for words; done gets them when some were typed. Until then
// the key Done changes nothing.
func newWording(sh *Shell, title, line, ask, about string, done func(string)) *wording {
	w := &wording{sh: sh, title: title, line: line, ask: ask, done: done}
	w.out = parts.NewReadout(parts.ReadoutView{ID: "typed"})
	w.words = parts.NewLines(parts.LabelView{ID: "about", Role: look.Lead, Text: about})
	pad := parts.NewLetterPad(func(s string) { w.text += s; sh.refresh() }, func() {
		if r := []rune(w.text); len(r) > 0 {
			w.text = string(r[:len(r)-1])
		}
		sh.refresh()
	}, func() {
		if text := strings.TrimSpace(w.text); text != "" {
			w.done(text)
		}
	})
	w.root = box(func(size fyne.Size) {
		gap, row := look.U(look.Gap), look.U(look.Floor)
		padH := 4*row + 3*gap
		y := size.Height - padH
		place(pad, 0, y, size.Width, padH)
		place(w.out, 0, y-gap-row, size.Width, row)
		place(w.words, gap, 0, size.Width-2*gap, y-2*gap-row)
	}, w.words, w.out, pad)
	return w
}

func (w *wording) body() fyne.CanvasObject { return w.root }

func (w *wording) show(*now) head {
	v := parts.ReadoutView{ID: "typed", Text: w.text, Tone: parts.Live, Role: look.Place}
	if w.text == "" {
		v.Text, v.Role, v.Tone = w.ask, look.Lead, parts.Hole
	}
	w.out.Set(v)
	return head{title: w.title, sentence: w.line, back: true, letters: true}
}

// newOtherRig lets a rig arrive that is in no table.
func newOtherRig(sh *Shell) screen {
	return newWording(sh, words.L("Another rig"), words.L("A rig that nobody listed"), words.L("What is painted on it"), words.L("Type what stands on the rig, such as T12, then Done.\n"+
		"It can carry pieces of others from then on, and its crew can hold some. Its own pieces are logged in words."), func(text string) {
		sh.over = nil
		sh.act(model.Act{Verb: model.Arrive, Rig: text})
	})
}

const unknownID = "unknown:" // before the words of a piece that is in no table

// unknownTiles are the pieces of the scene that are in no table, until
// somebody says what they were.
func (n *now) unknownTiles() []parts.TileView {
	var out []parts.TileView
	for _, said := range n.scene.Unknown {
		out = append(out, parts.TileView{ID: unknownID + said, Name: said, State: parts.TileUnknown, Word: words.L("whose?"), Listed: "unknown"})
	}
	return out
}

// newWhatWasIt asks what an unknown piece was.
func newWhatWasIt(t *tarpScreen, said string) screen {
	return newWording(t.sh, words.L("What was it?"), words.F("Logged in words: %s", said), words.L("Whose it is, and where it went"), words.F("Say whose %s is, such as: hook of Truck 9, given back. Then it is settled.\nNever write a patient's name or condition.", quoted(said)), func(text string) {
		t.sh.over = nil
		t.logTap(board.Tap{Scene: t.sh.now().scene.ID, Acts: []model.Act{{Verb: model.Settle, Item: said, Quantity: 1, Note: text}}})
	})
}

// unlisted is whether words can name an unknown piece: some, that no item has.
func (n *now) unlisted(words string) bool {
	return words != "" && n.scene.ID != "" && !n.scene.Closed && n.d.ItemIndex(words) < 0 && !slices.Contains(n.scene.Unknown, words)
}

// logUnknown logs a piece that is in no table, in the words that were typed.
func (t *tarpScreen) logUnknown(words string) {
	n := t.sh.now()
	if !n.unlisted(words) {
		return
	}
	t.find.on, t.picks = false, nil
	t.calm()
	t.shown = model.Place{Kind: model.Tarp, Ground: n.scene.Ground}
	t.tiles.FirstPage()
	t.logTap(board.Tap{Scene: n.scene.ID, Acts: []model.Act{{Verb: model.PullOff, Item: words, Quantity: 1,
		From: string(model.Home), To: string(model.Tarp), By: n.scene.Staging}}})
}

// quoted are words as they were typed, set apart.
func quoted(words string) string { return "\u201c" + words + "\u201d" }
