package ui

import (
	"strings"

	"tarpside/board/paper"
	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// papersScreen is all that goes onto paper and to other tablets: each paper of
// the board as it is now, what was written by hand, and the stick. It is a
// list; what became of the last paper stands beside it.
type papersScreen struct {
	sh   *Shell
	says string // what became of the last paper
	list *rowList
}

func newPapers(sh *Shell) *papersScreen {
	p := &papersScreen{sh: sh}
	p.list = newRowList(words.L("Paper and stick"), words.L("Touch a paper to open it in this system's viewer, and print it there"), p.rows, p.aside)
	return p
}

// rows are the two ways in, and then the papers.
func (p *papersScreen) rows(n *now) []rowDo {
	out := []rowDo{
		{parts.RowView{ID: "from-paper", Title: words.L("Enter what was written by hand"), Second: words.L("line by line, from the tarp sheet"), Icon: "paper", Tone: parts.Quiet, Go: "go"},
			func() { p.sh.open(newFromPaper(p.sh).list) }},
		{parts.RowView{ID: "stick", Title: words.L("By stick, to and from another tablet"), Second: words.L("the whole log in one file"), Icon: "with", Tone: parts.Quiet, Go: "go", Off: n.opts.Folders == nil},
			func() { p.sh.open(newStick(p.sh).list) }},
	}
	if n.readsOnly() {
		out[0].view = n.shutRow(out[0].view)
		out[0].view.Second = words.L("this window only reads")
	}
	size := parts.RowView{ID: "sheet", Title: words.L("Letter paper"), Second: words.L("touch for A4"), Icon: "paper", Tone: parts.Quiet, Right: words.L("in the printer")}
	other := paper.A4.Name
	if n.sheet() == paper.A4 {
		size.Title, size.Second, other = words.L("A4 paper"), words.L("touch for letter"), paper.Letter.Name
	}
	out = append(out, rowDo{size, func() { p.sh.setPref(settingSheet, other); p.sh.refresh() }})
	for _, made := range n.papers() {
		about := ""
		if use, ok := paperUses[made.Kind]; ok {
			about = words.L(use)
		}
		if made.Kind == "tarp" {
			about = parts.Or(about, words.L("to go on by hand"))
		}
		if rig := made.About(); rig != "" {
			about = parts.Or(join2(rig, about), rig)
		}
		v := parts.RowView{ID: "paper-" + strings.TrimSuffix(made.File, ".pdf"), Title: paperName(made), Second: about, Tone: parts.Quiet, Go: "go", Off: n.opts.Print == nil}
		out = append(out, rowDo{v, func() { p.print(made) }})
	}
	return out
}

// paperNames are the names of the papers, but for the two that count lines.
var paperNames = map[string]string{
	"tarp": words.K("Tarp sheet"), "restock": words.K("Restock and order"), "tags": words.K("Out-of-service labels"), "lost": words.K("Lost reports"),
	"activity": words.K("Activity log"), "trail-slips": words.K("Trail slips"), "release": words.K("Release slip"), "putback": words.K("Put back"),
	"slots": words.K("Slot sheets"), "labels-qr": words.K("QR labels"), "labels-bars": words.K("Bar labels"),
}

// paperUses are what the papers are for.
var paperUses = map[string]string{
	"tarp": words.K("to go on by hand: time, piece, where to, who"), "closeout": words.K("what the scene leaves open, for the signature"),
	"restock": words.K("what was used, and what to order"), "tags": words.K("one for each piece with a fault"), "lost": words.K("one for each piece given up"),
	"activity": words.K("every entry in its order"), "trail-slips": words.K("what each carrier has"), "release": words.K("what it leaves, to be signed for"),
	"putback": words.K("door by door, to tick"), "open": words.K("what does not ride home, and who has it"), "slots": words.K("what lives where, one a door"),
	"labels-qr": words.K("for the pieces, to be scanned"), "labels-bars": words.K("for the pieces, to be scanned"),
}

// join2 joins two words with a comma; an empty one is left out.
func join2(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + ", " + b
}

// paperName is the name of a paper on the screen. On the paper itself it is
// English.
func paperName(p paper.Paper) string {
	switch {
	case p.Kind == "open":
		return words.N("Open list, %d line", "Open list, %d lines", p.Lines)
	case p.Kind == "closeout" && p.Lines == 0:
		return words.L("Close-out: no line is open")
	case p.Kind == "closeout":
		return words.N("Close-out with %d OPEN LINE", "Close-out with %d OPEN LINES", p.Lines)
	}
	if name, ok := paperNames[p.Kind]; ok {
		return words.L(name)
	}
	return p.Title
}

func (n *now) papers() []paper.Paper {
	return paper.All(n.pic, paper.Options{Sheet: n.sheet(), Printed: n.at})
}

func (n *now) sheet() paper.Sheet {
	if n.pref(settingSheet) == paper.A4.Name {
		return paper.A4
	}
	return paper.Letter
}

// settingSheet is the paper in this tablet's printer.
const settingSheet = "sheet"

func (p *papersScreen) aside(n *now) (title, text string) {
	if p.says != "" {
		return words.L("The last paper"), p.says
	}
	return words.L("Paper carries on"), words.L("When a tablet is dead, wet or elsewhere, go on with the tarp sheet by hand, and enter it here afterwards.\n\n" +
		"Print the slot sheets, the tarp sheet and the release slips before you need them, and keep them in the rigs.")
}

// print writes a paper and opens it. The viewer is another program: what came
// of it is told when it is known.
func (p *papersScreen) print(made paper.Paper) {
	path := ""
	path, err := p.sh.opts.Print(made, func(err error) {
		p.says = words.F("%s is open in another window.\n\nThe file is %s", parts.B(paperName(made)), path)
		if err != nil {
			p.says = words.F("No viewer opened. This system has no program that shows PDF, or it did not start. The paper is made all the same.\n\nThe file is %s", path)
		}
		p.sh.refresh()
	})
	p.says = words.F("%s is made.\n\nThe file is %s", parts.B(paperName(made)), path)
	if err != nil {
		p.says = words.F("The paper could not be written. The log is as it was. (%s)", words.Said(err.Error()))
	}
	p.sh.refresh()
}

// onPaper opens the list of papers and prints the one of a file name, such as
// "release_E42".
func (sh *Shell) onPaper(file string) {
	p := newPapers(sh)
	sh.open(p.list)
	for _, made := range sh.now().papers() {
		if made.File == file+".pdf" && sh.opts.Print != nil {
			p.print(made)
			return
		}
	}
}
