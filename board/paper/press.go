package paper

import (
	"fmt"
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// A Sheet is a size of paper, in points of 1/72 inch.
type Sheet struct {
	Name          string
	Width, Height float64
}

// The two sizes: US letter, and A4 as ISO 216 has it (210 by 297 mm).
var (
	Letter = Sheet{"letter", 612, 792}
	A4     = Sheet{"a4", 210 * mm, 297 * mm}
)

const mm = 72 / 25.4

// Sizes of type and of what is written on, in points. Nobody who stands in
// the rain reads less than 12 point; a grease pencil needs a box of 8 mm.
const (
	margin  = 36.0
	huge    = 40.0
	title   = 22.0
	heading = 15.0
	body    = 12.5
	small   = 9.0
	tiny    = 7.0

	box     = 22.0 // the side of a box to tick
	writing = 32.0 // the height of a line to write on
	signing = 50.0 // that, the word below it and some air
	gap     = 9.0  // between cells
)

// A face is regular or bold.
type face string

const (
	plain face = ""
	bold  face = "B"
)

// A press prints one paper. y is the top of what comes next.
type press struct {
	*fpdf.Fpdf
	sheet       Sheet
	head        head
	left, right float64
	top, bottom float64
	y           float64
	now         face
	size        float64
	gaps        []gaps // what could not be shown, page by page
	onPage      func() // draws the head of a table that goes on
	without     bool   // labels: nothing but the line at the foot
}

// A head is what stands on every page.
type head struct {
	Title, Rig, Scene, Inventory string
	Printed                      time.Time
}

func newPress(sheet Sheet, h head) *press {
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: fpdf.SizeType{Wd: sheet.Width, Ht: sheet.Height}})
	f.SetCatalogSort(true)
	f.SetCreationDate(h.Printed)
	f.SetModificationDate(h.Printed)
	f.SetProducer("Tarpside", true)
	f.SetTitle(h.Title+", "+h.Rig, true)
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.AddUTF8FontFromBytes("go", string(plain), goregular.TTF)
	f.AddUTF8FontFromBytes("go", string(bold), gobold.TTF)
	return &press{Fpdf: f, sheet: sheet, head: h, left: margin, right: sheet.Width - margin, bottom: sheet.Height - margin - 16}
}

// page starts a page with its head. The foot is printed at the end, when the
// number of pages is known.
func (p *press) page() {
	p.AddPage()
	p.gaps = append(p.gaps, gaps{})
	p.SetLineWidth(0.8)
	p.top, p.y = margin, margin
	if p.without {
		return
	}
	h := p.head
	name := h.Title
	if p.PageNo() > 1 {
		name += " (goes on)"
	}
	p.para(bold, title, p.left, p.right-p.left, name)
	p.lines(bold, heading, p.left, p.right-p.left, "Rig: "+h.Rig, 2)
	p.lines(plain, body, p.left, p.right-p.left, "Scene: "+h.Scene, 2)
	p.y += 3
	p.SetLineWidth(1.6)
	p.Line(p.left, p.y, p.right, p.y)
	p.SetLineWidth(0.8)
	p.y += 6
	p.top = p.y
	if p.onPage != nil {
		p.onPage()
	}
}

// room makes a new page if there is less than h left on this one.
func (p *press) room(h float64) {
	if p.PageNo() == 0 || p.y+h > p.bottom && p.y > p.top+1 {
		p.page()
	}
}

// feet prints the line at the foot of every page, and above it what the page
// has letters of that the print cannot draw.
func (p *press) feet() {
	n := p.PageCount()
	for i := 1; i <= n; i++ {
		p.SetPage(i)
		p.now = "none"
		h := p.head
		foot := fmt.Sprintf("Page %d of %d · printed %s · inventory %s · Tarpside", i, n, h.Printed.Format("2006-01-02 15:04 MST"), h.Inventory)
		size, y := small, p.sheet.Height-margin+4
		if p.without {
			foot = fmt.Sprintf("%s · %s · rig %s · scene %s", foot, h.Title, h.Rig, h.Scene)
			size, y = tiny, p.sheet.Height-20
		}
		p.set(plain, size)
		p.show(p.left, y, p.cut(p.draw(foot), p.right-p.left))
		if note := p.gaps[i-1].words(); note != "" {
			p.show(p.left, y-size-2, p.cut(note, p.right-p.left))
		}
	}
}

// write ends the paper.
func (p *press) write(w io.Writer) error {
	if p.PageNo() == 0 {
		p.page()
	}
	p.feet()
	if err := p.Output(w); err != nil {
		return fmt.Errorf("%s could not be printed: %w", p.head.Title, err)
	}
	return nil
}

// set chooses the type.
func (p *press) set(f face, size float64) {
	if p.now != f || p.size != size {
		p.now, p.size = f, size
		p.SetFont("go", string(f), size)
	}
}

// show prints text that was made drawable, with its baseline at y.
func (p *press) show(x, y float64, text string) {
	if text != "" {
		p.Text(x, y, text)
	}
}

// tick draws a square to tick, its top at y.
func (p *press) tick(x, y float64) { p.Rect(x, y, box, box, "D") }

// sign draws a line to write on with a word below it.
func (p *press) sign(x, w float64, word string) {
	p.Line(x, p.y+writing, x+w, p.y+writing)
	p.set(plain, small)
	p.show(x, p.y+writing+small+1, p.draw(word))
}

// signatures prints lines to sign on, two in a row, all on one page.
func (p *press) signatures(who ...string) {
	p.room(signing * float64((len(who)+1)/2))
	half := (p.right - p.left - 20) / 2
	for i, w := range who {
		x := p.left
		if i%2 == 1 {
			x += half + 20
		}
		p.sign(x, half, w+": name, signature, time")
		if i%2 == 1 || i == len(who)-1 {
			p.y += signing
		}
	}
}

// section prints a heading that is not left alone at the foot of a page.
func (p *press) section(text string, follows float64) {
	p.room(heading*2.5 + 8 + follows)
	p.y += 6
	p.lines(bold, heading, p.left, p.right-p.left, text, 2)
	p.y += 2
}

// say prints a few lines of text.
func (p *press) say(text string) {
	const most = 8
	if p.PageNo() == 0 {
		p.page()
	}
	p.room(p.tall(plain, body, p.right-p.left, text, most))
	p.lines(plain, body, p.left, p.right-p.left, text, most)
}
