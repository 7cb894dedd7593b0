package ui

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"tarpside/model"
	"tarpside/model/tarpsheet"
	"tarpside/ui/look"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// fromPaper enters what was written on the tarp sheet by hand, line by line:
// time, piece, how many, where to, who. What would be logged is shown before
// it is.
type fromPaper struct {
	sh    *Shell
	lines []tarpsheet.Line
	line  tarpsheet.Line // that is being entered
	says  string
	right bool         // the trial went well
	wrong map[int]bool // lines that are not right, from 1
	list  *rowList
}

func newFromPaper(sh *Shell) *fromPaper {
	f := &fromPaper{sh: sh}
	f.list = newRowList(words.L("From paper"), words.L("Enter the lines of the tarp sheet as they were written, then log them together"), f.rows, f.aside)
	f.list.wrong = func() bool { return len(f.lines) > 0 && !f.right }
	return f
}

func (f *fromPaper) rows(n *now) []rowDo {
	out := []rowDo{{parts.RowView{ID: "next-line", Title: words.L("Enter the next line"), Second: words.L("time, piece, how many, where to, who"), Icon: "plus", Tone: parts.Quiet, Go: "go"}, f.next}}
	if len(f.lines) > 0 && f.right {
		yes := parts.RowView{ID: "log-paper", Title: words.N("Yes, log %d line", "Yes, log %d lines", len(f.lines)), Second: words.L("each in its minute, marked as from paper"), Icon: "tick", Tone: parts.Live}
		out = append(out, rowDo{yes, f.log})
	}
	for i, l := range f.lines {
		v := parts.RowView{ID: fmt.Sprintf("line-%d", i+1), Title: paperTime(l.Time) + "  " + capital(f.words(n, l)), Second: words.L("touch to take it out"), Tone: parts.Quiet, Go: "cross"}
		if f.wrong[i+1] {
			v.Tone = parts.Alarm
		}
		out = append(out, rowDo{v, func() {
			f.lines = append(f.lines[:i:i], f.lines[i+1:]...)
			f.try()
			f.sh.refresh()
		}})
	}
	return out
}

// words are a line without its time.
func (f *fromPaper) words(n *now, l tarpsheet.Line) string {
	what := words.L("piece unknown")
	if it := n.d.Item(l.Piece); it != nil {
		what = it.Name
		if it.Quantity > 1 {
			if what = l.Quantity + " " + what; l.Quantity != "1" {
				what = l.Quantity + " " + low(many(it.Name))
			}
		}
	} else if said, ok := tarpsheet.Words(l.Piece); ok {
		what = quoted(said)
	}
	out := what
	switch p, err := model.ParsePlace(l.To); {
	case l.To == tarpsheet.Unknown:
		out += words.L(", place unknown")
	case err == nil && p.Kind == model.Home:
		out += words.L(", back home")
	case err == nil:
		out += words.F(", to %s", n.placeName(p))
	}
	switch l.Who {
	case "":
	case tarpsheet.Unknown:
		out += words.L(", who unknown")
	default:
		out += ", " + n.memberName(l.Who)
	}
	return out
}

func (f *fromPaper) aside(*now) (title, text string) {
	switch {
	case len(f.lines) > 0 && f.right:
		return words.L("This would be logged; nothing is yet"), f.says
	case len(f.lines) > 0:
		return words.L("Not right yet"), f.says
	case f.says != "":
		return words.L("Logged from paper"), f.says
	}
	return words.L("How paper comes in"), words.L("Each line goes to its minute in the story. What cannot be read any more is unknown.\n\n" +
		"What contradicts the log is shown beside it as a claim, and eyes settle it. Nothing that was logged is changed.")
}

// try keeps what would be logged.
func (f *fromPaper) try() { f.enter(true) }

// log logs the lines.
func (f *fromPaper) log() {
	if f.enter(false); f.right {
		f.lines = nil
	}
	f.sh.refresh()
}

// enter hands the lines to the board and keeps what it says.
func (f *fromPaper) enter(dry bool) {
	f.wrong = map[int]bool{}
	if f.says, f.right = "", false; len(f.lines) == 0 {
		return
	}
	for i := range f.lines {
		f.lines[i].Row = i + 1
	}
	n := f.sh.now()
	entries, faults, err := n.opts.Board.EnterPaper(f.lines, n.by, dry)
	f.sh.catchUp()
	switch {
	case err != nil:
		f.says = inWordsLong(err)
	case len(faults) > 0:
		for _, x := range faults {
			where := words.F("Line %d", x.Row)
			f.wrong[x.Row] = true
			if x.Row == 0 {
				where = words.L("All lines")
			}
			f.says += words.F("%s: %s. Right would be: %s.", parts.B(where), words.Said(x.Wrong), words.Said(x.Right)) + "\n"
		}
	default:
		f.says, f.right = n.paperReplies(entries), true
	}
}

// paperReplies says what came of each entry, under its own words.
func (n *now) paperReplies(entries []model.Entry) string {
	var out []string
	for _, e := range entries {
		mark := ""
		if e.Reply.Word != model.OK {
			mark = words.L(string(e.Reply.Word)) + ": "
		}
		said := words.Said(e.Reply.Text)
		if said == "" {
			said = words.L("as the log has it")
		}
		out = append(out, parts.B(n.clock(e.At())+"  "+n.actLine(&e))+"\n"+mark+said)
	}
	return strings.Join(out, "\n\n")
}

// next asks for a line, cell by cell.
func (f *fromPaper) next() {
	f.line = tarpsheet.Line{}
	f.sh.open(newPaperTime(f))
}

// paperTime is the time of a line for people.
func paperTime(cell string) string {
	if cell == tarpsheet.Unknown {
		return words.L("no time")
	}
	return cell
}

// then goes on from one cell to the next; after the last the line is there.
func (f *fromPaper) then(next screen) {
	last := len(f.sh.over) - 1
	delete(f.sh.drawn, f.sh.over[last])
	f.sh.over = f.sh.over[:last]
	if next != nil {
		f.sh.open(next)
		return
	}
	f.lines = append(f.lines, f.line)
	f.try()
	f.sh.refresh()
}

// newPaperWhere asks where the pieces went.
func newPaperWhere(f *fromPaper) screen {
	n := f.sh.now()
	list := []choice{{parts.KindPlace, "tarp", words.L("Tarp"), words.L("back, or staged"), parts.MarkView{}}, {parts.KindPlace, "home", words.L("Back home"), words.L("in its own slot"), parts.MarkView{}}}
	for _, name := range n.scenePlaces() {
		list = append(list, choice{parts.KindPlace, "at:" + name, placeWord(name), n.meaning(name), parts.MarkView{}})
	}
	for _, a := range n.d.Agencies {
		if strings.HasPrefix(strings.ToLower(a.Kind), "home") {
			continue // what is ours does not go along with us
		}
		list = append(list, choice{parts.KindPlace, "with:" + a.Code, n.partyName(a.Code), words.L("went with them"), parts.MarkView{}})
	}
	list = append(list, choice{parts.KindPlace, "used", words.L("Used up"), "", parts.MarkView{}},
		choice{parts.KindAct, placeNew, words.L("Another place"), words.L("as it was written"), parts.MarkView{}}, choice{parts.KindPlace, tarpsheet.Unknown, words.L("Cannot be read"), words.L("kept as unknown"), parts.MarkView{}})
	return newChooser(f.sh, words.L("Where to, or back"), f.words(n, f.line), list, func(id string) {
		if id == placeNew {
			f.then(newWordPad(f.sh, words.L("Another place"), "", mostPlace, f.where))
			return
		}
		f.line.To = id
		f.then(newPaperWho(f))
	})
}

// mostPlace is how many letters a place on paper may have.
const mostPlace = 24

// where takes a place in the words of the sheet; none is asked for again.
func (f *fromPaper) where(written string) {
	p, err := model.ParsePlace(string(model.At) + ":" + written)
	if err != nil {
		f.then(newPaperWhere(f))
		return
	}
	for _, name := range f.sh.now().scenePlaces() { // trail is Trail
		if strings.EqualFold(name, p.Name) {
			p.Name = name
		}
	}
	f.line.To = p.String()
	f.then(newPaperWho(f))
}

// newPaperWho asks who had it.
func newPaperWho(f *fromPaper) screen {
	n := f.sh.now()
	list := []choice{{parts.KindMember, "nobody", words.L("Nobody is written"), "", parts.MarkView{}}, {parts.KindMember, tarpsheet.Unknown, words.L("Cannot be read"), words.L("kept as unknown"), parts.MarkView{}}}
	for _, m := range n.crew() {
		list = append(list, choice{parts.KindMember, m.ID, m.Name, m.Role, parts.MarkView{}})
	}
	return newChooser(f.sh, words.L("Who"), f.words(n, f.line), list, func(id string) {
		if f.line.Who = id; id == "nobody" {
			f.line.Who = ""
		}
		f.then(nil)
	})
}

// paperPiece finds the piece by its letters.
type paperPiece struct {
	f     *fromPaper
	typed string
	which bool // done was touched while several have these letters
	out   *parts.Readout
	none  *parts.Key
	pad   *parts.LetterPad
	found *parts.Grid
	cells []parts.KeyView
	root  *fyne.Container
}

func newPaperPiece(f *fromPaper) screen {
	p := &paperPiece{f: f}
	p.out = parts.NewReadout(parts.ReadoutView{ID: "typed"})
	p.none = parts.NewKey(parts.KeyView{}, func() {
		if p.inWords() {
			p.done()
			return
		}
		f.line.Piece, f.line.Quantity = tarpsheet.Unknown, ""
		f.then(newPaperWhere(f))
	})
	p.pad = parts.NewLetterPad(func(s string) { p.typed, p.which = p.typed+s, false; f.sh.refresh() }, func() {
		p.which = false
		if r := []rune(p.typed); len(r) > 0 {
			p.typed = string(r[:len(r)-1])
		}
		f.sh.refresh()
	}, p.done)
	cell := func() fyne.Size { return fyne.NewSize(look.U(300), look.U(look.Target)) }
	p.found = parts.NewGrid(cell, func() fyne.CanvasObject {
		var k *parts.Key
		k = parts.NewKey(parts.KeyView{}, func() { p.take(k.View().ID) })
		return k
	}, func(i int, cell fyne.CanvasObject) {
		cell.(*parts.Key).Set(p.cells[i])
	})
	p.root = box(p.layout, p.out, p.none, p.found, p.pad)
	return p
}

func (p *paperPiece) body() fyne.CanvasObject { return p.root }

func (p *paperPiece) layout(size fyne.Size) {
	gap, row := look.U(look.Gap), look.U(look.Floor)
	padH := 4*row + 3*gap
	y := size.Height - padH - gap - row
	side := look.U(300)
	place(p.found, 0, 0, size.Width, y-gap)
	place(p.out, 0, y, size.Width-side-gap, row)
	place(p.none, size.Width-side, y, side, row)
	place(p.pad, 0, size.Height-padH, size.Width, padH)
}

func (p *paperPiece) show(n *now) head {
	v := parts.ReadoutView{ID: "typed", Text: p.typed, Tone: parts.Live, Role: look.Place}
	if p.typed == "" {
		v.Text, v.Role, v.Tone = words.L("Three letters of the piece"), look.Lead, parts.Hole
	}
	p.out.Set(v)
	var cells []parts.KeyView
	if want := fold(p.typed); want != "" {
		for _, i := range n.ranked(want) {
			it := &n.d.Items[i]
			cells = append(cells, parts.KeyView{Kind: parts.KindPiece, ID: it.ID, Title: it.Name, Second: n.whereNow(i), Mark: n.mark(it.Rig), Lay: parts.LayLeft})
		}
	}
	if !slices.Equal(cells, p.cells) {
		p.cells = cells
		p.found.SetLen(len(cells))
	}
	line := words.F("What was written at %s", p.f.line.Time)
	if p.f.line.Time == tarpsheet.Unknown {
		line = words.L("What was written, at a time that cannot be read")
	}
	switch {
	case p.typed == "" && p.which:
		line = words.L("Type some letters of the piece, or touch Cannot be read")
	case p.which:
		line = words.L("Several have these letters: touch the one that was written")
	}
	none := parts.KeyView{ID: "unreadable", Title: words.L("Cannot be read"), Second: words.L("kept as unknown"), Lay: parts.LayLeft}
	if p.inWords() {
		none = parts.KeyView{ID: "in-words", Title: words.L("In these words"), Second: words.L("no such piece is listed"), Lay: parts.LayLeft}
	}
	p.none.Set(none)
	return head{title: words.L("Piece"), sentence: line, back: true, letters: true}
}

// inWords tells whether what is typed names no piece of the inventory.
func (p *paperPiece) inWords() bool { return strings.TrimSpace(p.typed) != "" && len(p.cells) == 0 }

// done takes the one piece that has these letters, or what no table has in the
// words of the sheet. Where it cannot, it says what to touch.
func (p *paperPiece) done() {
	switch {
	case len(p.cells) == 1:
		p.take(p.cells[0].ID)
	case p.inWords():
		p.take(tarpsheet.InWords(strings.TrimSpace(p.typed)))
	default:
		p.which = true
		p.f.sh.refresh()
	}
}

func (p *paperPiece) take(id string) {
	p.f.line.Piece, p.f.line.Quantity = id, "1"
	if it := p.f.sh.now().d.Item(id); it != nil && it.Quantity > 1 {
		p.f.then(newPaperNumber(p.f))
		return
	}
	p.f.then(newPaperWhere(p.f))
}
