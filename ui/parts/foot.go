package parts

import (
	"strconv"

	"fyne.io/fyne/v2"

	"tarpside/ui/look"
	"tarpside/ui/words"
)

// FootTerm is the place of a term in the proof. The order never changes.
type FootTerm int

// The terms of the proof.
const (
	FootHome FootTerm = iota
	FootTarp
	FootOut
	FootCarried
	FootWith
	FootCharging
	FootBagged
	FootUsed
	FootLost
	FootUnexplained
	FootTerms // how many there are
)

// FootWords are the English words of the terms, as the table of words has
// them.
var FootWords = [FootTerms]string{
	words.K("home again"), words.K("on tarp"), words.K("out"), words.K("carried"), words.K("with others"), words.K("charging"), words.K("bagged"), words.K("used"), words.K("lost"), words.K("unexplained"),
}

var footColor = [FootTerms]fyne.ThemeColorName{
	look.Accent, look.Balance1, look.Balance2, look.Balance3, look.Balance3,
	look.Balance4, look.Balance4, look.Balance4, look.Alarm, look.Alarm,
}

// FootView is the proof: what came off is all accounted for.
type FootView struct {
	CameOff   int
	OffWord   string // "came off"
	Counts    [FootTerms]int
	Words     [FootTerms]string
	Says      string // "Adds up" or "Does not add up"
	Wrong     bool   // the foot turns to alarm
	Line      string // when wrong: the line and the last row, named
	Elsewhere string // joins the terms that have no room: "elsewhere"
	And       string // "and"
	Most      int    // at most so many terms, nought for all
}

// Foot is the foot of every screen. It is for reading: too low to touch.
type Foot struct {
	face
	view FootView
}

// NewFoot makes a foot.
func NewFoot(view FootView) *Foot {
	f := &Foot{}
	f.init(f, 600, look.Foot, f.paintFoot)
	f.take(view)
	return f
}

// Set shows another balance.
func (f *Foot) Set(view FootView) {
	if f.view != view {
		f.take(view)
		f.Refresh()
	}
}

func (f *Foot) take(v FootView) {
	f.view = v
	text := strconv.Itoa(v.CameOff) + " " + v.OffWord + " ="
	sep := " "
	for _, i := range v.terms() {
		text += sep + strconv.Itoa(v.Counts[i]) + " " + v.Words[i]
		sep = " + "
	}
	state := "ok"
	if v.Wrong {
		state = "wrong"
		text += ". " + v.Line
	}
	f.part = Part{Kind: KindText, ID: "proof", Text: text + ". " + v.Says, State: state}
}

// terms lists the terms that show: those that are not nought, and home and
// unexplained always.
func (v FootView) terms() []int {
	var out []int
	for i, n := range v.Counts {
		if n != 0 || FootTerm(i) == FootHome || FootTerm(i) == FootUnexplained {
			out = append(out, i)
		}
	}
	return out
}

// segments gives each count its width of a bar: in proportion, but never
// under least, so that one lost punch is visible. Noughts get nothing.
func segments(counts []int, width, gap, least float32) []float32 {
	out := make([]float32, len(counts))
	total, shown := 0, 0
	for _, n := range counts {
		if n > 0 {
			total += n
			shown++
		}
	}
	if total == 0 {
		return out
	}
	room := width - gap*float32(shown-1)
	least = min(least, room/float32(shown))
	fixed := make([]bool, len(counts))
	for again := true; again; {
		again = false
		left, units := room, 0
		for i, n := range counts {
			if fixed[i] {
				left -= least
			} else if n > 0 {
				units += n
			}
		}
		for i, n := range counts {
			if n <= 0 || fixed[i] {
				continue
			}
			out[i] = left * float32(n) / float32(units)
			if out[i] < least {
				out[i], fixed[i], again = least, true, true
			}
		}
	}
	return out
}

func (f *Foot) paintFoot(p *Pen, size fyne.Size) {
	v := f.view
	ground, rule := look.Surface, look.Strong
	if v.Wrong {
		ground, rule = look.AlarmGround, look.Alarm
	}
	p.Fill(0, 0, size.Width, size.Height, ground)
	p.Fill(0, 0, size.Width, look.U(1), rule)
	in := look.U(16)
	barY, barH := look.U(7), look.U(9)
	x := in
	for i, w := range segments(v.Counts[:], size.Width-2*in, look.U(3), look.U(6)) {
		if w > 0 {
			p.Rect(x, barY, w, barH, footColor[i], look.Clear, 0, look.U(2))
			x += w + look.U(3)
		}
	}
	y := barY + barH
	h := size.Height - y
	icon, color := "tick", look.Text
	if v.Wrong {
		icon, color = "warn", look.Alarm
	}
	side := look.U(22)
	p.Icon(icon, color, size.Width-in-side, y+(h-side)/2, side)
	says := p.fit(v.Says, Ink{Role: look.BodyBold, Color: color, Lines: 1}, size.Width/3, 0)
	right := size.Width - in - side - look.U(8) - says.W
	p.Put(says, right, y+(h-says.H)/2, says.W)
	if v.Wrong {
		p.Middle(v.Line, Ink{Role: look.BodyBold, Lines: 2}, in, y, right-in-look.U(16), h)
		return
	}
	f.paintTerms(p, in, y, right-in-look.U(12), h)
}

// paintTerms writes the terms; where they have no room they get smaller, and
// then the least of them join as "and N elsewhere".
func (f *Foot) paintTerms(p *Pen, x, y, w, h float32) {
	terms := f.view.terms()
	most := f.view.Most
	if most == 0 {
		most = len(terms)
	}
	role := look.Body
	for {
		kept, rest := keep(terms, f.view.Counts[:], most)
		cells := f.cells(p, kept, rest, role)
		gap := look.U(14)
		if role == look.Small {
			gap = look.U(10)
		}
		var total float32
		for _, c := range cells {
			total += c.room + gap
		}
		switch {
		case total-gap <= w || (role == look.Small && most <= 2):
			for _, c := range cells {
				if c.swatch {
					s := look.U(11)
					p.swatch(c.color, c.outline, x, y+(h-s)/2, s)
				}
				p.Put(c.text, x+c.room-c.text.W, y+(h-c.text.H)/2, c.text.W)
				x += c.room + gap
			}
			return
		case role == look.Body:
			role = look.Small
		default:
			most = min(most, len(terms)) - 1
		}
	}
}

type footCell struct {
	text            Laid
	room            float32
	swatch, outline bool
	color           fyne.ThemeColorName
}

func (f *Foot) cells(p *Pen, kept []int, rest int, role look.Role) []footCell {
	v := f.view
	lay := func(s string, color fyne.ThemeColorName) Laid {
		return p.fit(s, Ink{Role: role, Color: color, Lines: 1, Keep: true}, 1e4, 0)
	}
	first := lay(B(strconv.Itoa(v.CameOff))+" "+v.OffWord, look.Text)
	eq := lay("=", look.Dim)
	cells := []footCell{{text: first, room: first.W}, {text: eq, room: eq.W}}
	for _, i := range kept {
		color := look.Text
		if footColor[i] == look.Alarm && v.Counts[i] > 0 {
			color = look.Alarm
		}
		t := lay(B(strconv.Itoa(v.Counts[i]))+" "+v.Words[i], color)
		cells = append(cells, footCell{t, t.W + look.U(16), true, v.Counts[i] == 0, footColor[i]})
	}
	if rest > 0 {
		t := lay(v.And+" "+B(strconv.Itoa(rest))+" "+v.Elsewhere, look.Text)
		cells = append(cells, footCell{text: t, room: t.W})
	}
	return cells
}

// keep chooses which terms are written when only some have room: home and
// unexplained, then the largest. The rest is summed.
func keep(terms, counts []int, most int) (kept []int, rest int) {
	drop := map[int]bool{}
	for len(terms)-len(drop) > max(most, 2) {
		low := -1
		for _, i := range terms {
			if FootTerm(i) == FootHome || FootTerm(i) == FootUnexplained || drop[i] {
				continue
			}
			if low < 0 || counts[i] <= counts[low] {
				low = i
			}
		}
		if low < 0 {
			break
		}
		drop[low] = true
		rest += counts[low]
	}
	for _, i := range terms {
		if !drop[i] {
			kept = append(kept, i)
		}
	}
	return kept, rest
}
