package paper

import (
	"cmp"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"tarpside/board"
	"tarpside/model"
	"tarpside/model/judge"
	"tarpside/model/trail"
)

// Options say how papers are printed.
type Options struct {
	Sheet   Sheet
	Printed time.Time // now; clocks on paper are in its zone
	Rig     string    // papers about one rig are made for this one; "" for all

	Party trail.Party // with people who walk, each has a slip
}

// A Paper is one file to print. File is its name without a folder.
type Paper struct {
	File, Title string
	Kind        string // which paper it is, the first word of its file: "tarp", "open"
	Lines       int    // the open lines that the title of a list counts
	about       string
	print       func(p *press)
	head        head
	sheet       Sheet
}

// Write writes the paper as PDF: the same bytes for the same picture and
// options.
func (p Paper) Write(w io.Writer) error {
	pr := newPress(p.sheet, p.head)
	p.print(pr)
	return pr.write(w)
}

// About is the rig that the paper is about, "" for a paper about all.
func (p Paper) About() string { return p.about }

// All are the papers of a picture: those about the scene, then those of each
// rig. A list that is empty has a paper that says so.
func All(pic *board.Picture, o Options) []Paper {
	m := newMaker(pic, o)
	out := []Paper{m.tarp(), m.closeOut(), m.restock(), m.tags(), m.lost(), m.activity()}
	if len(o.Party.People) > 0 {
		out = append(out, m.slips(&o.Party))
	}
	for _, r := range m.rigs() {
		out = append(out, m.release(r), m.putBack(r), m.open(r))
		if m.d.Rig(r) != nil {
			out = append(out, m.slots(r), m.labelsQR(r), m.labelsBars(r))
		}
	}
	return out
}

// A maker makes the papers of one picture.
type maker struct {
	pic       *board.Picture
	s         *model.State
	d         *model.Department
	scene     *model.Scene
	o         Options
	inventory string
}

func newMaker(pic *board.Picture, o Options) *maker {
	return &maker{pic: pic, s: pic.State, d: pic.State.Dept, scene: pic.State.Scene(pic.Scene), o: o, inventory: Inventory(pic.State.Dept)}
}

// Inventory is a short name of a version of the inventory: two papers with
// the same one were printed from the same tables.
func Inventory(d *model.Department) string {
	text, err := json.Marshal(d)
	if err != nil {
		panic(err) // tables are text and finite numbers
	}
	sum := sha256.Sum256(text)
	return fmt.Sprintf("%x-%x", sum[:2], sum[2:4])
}

// rigs are those to print for.
func (m *maker) rigs() (out []string) {
	for _, r := range m.d.Rigs {
		out = append(out, r.ID)
	}
	out = append(out, m.s.Visitors()...)
	if m.o.Rig != "" {
		return slices.DeleteFunc(out, func(r string) bool { return r != m.o.Rig })
	}
	return out
}

// paper is a paper about a rig, or with "" about all.
func (m *maker) paper(kind, rig, title string, print func(p *press)) Paper {
	file, of, about := kind, "all", ""
	if rig != "" {
		file, of = kind+"_"+fileName(rig), m.rigName(rig)
		about = of
	}
	h := head{Title: title, Rig: of, Scene: m.sceneName(), Inventory: m.inventory, Printed: m.o.Printed}
	return Paper{File: file + ".pdf", Title: title, Kind: kind, about: about, print: print, head: h, sheet: m.o.Sheet}
}

// fileName keeps of a rig's id what every file system takes.
func fileName(id string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			return r
		}
		return '-'
	}, id)
}

func (m *maker) rigName(id string) string {
	if r := m.d.Rig(id); r != nil && r.Name != "" && r.Name != id {
		return r.Name + " (" + id + ")"
	}
	return id
}

func (m *maker) sceneName() string {
	switch name := m.scene.Name; {
	case name == "" && m.scene.Opened == 0:
		return "none open"
	case m.scene.Closed:
		return cmp.Or(name, "no name") + " (closed)"
	default:
		return cmp.Or(name, "no name")
	}
}

// clock is a time of day of an entry, in Unix ms.
func (m *maker) clock(at int64) string {
	return time.UnixMilli(at).In(m.o.Printed.Location()).Format("15:04")
}

// day is a date and time.
func (m *maker) day(at int64) string {
	if at == 0 {
		return ""
	}
	return time.UnixMilli(at).In(m.o.Printed.Location()).Format("2006-01-02 15:04")
}

// place is a place of a table in words, with what the place means.
func (m *maker) place(text string) string {
	head, behind, _ := strings.Cut(text, " (")
	p, err := model.ParsePlace(head)
	if err != nil {
		return text
	}
	out := judge.Where(m.d, p)
	for _, n := range m.d.Places {
		if p.Kind == model.At && n.Place == p.Name && n.Meaning != "" {
			out += ", " + n.Meaning
		}
	}
	if behind != "" {
		out += " (" + behind
	}
	return out
}

// members names members; several are joined with "+".
func (m *maker) members(ids string) string {
	names := strings.Split(ids, "+")
	for i, id := range names {
		if who := m.d.Member(id); who != nil {
			names[i] = who.Name
		}
	}
	return strings.Join(names, ", ")
}

// some is so many pieces in words.
func some(it *model.Item, n int) string {
	if it.Quantity == 1 {
		return it.Name
	}
	return fmt.Sprintf("%d %s", n, it.Name)
}

// answered are words of a table with their answers as people read them:
// "dry=no" is "dry: no".
func answered(words string) string {
	return strings.ReplaceAll(strings.ReplaceAll(words, "=", ": "), ";", "; ")
}

// cells reads a table by the names of its columns.
func cells(t board.Table, each func(cell func(column string) string)) {
	for _, row := range t.Rows {
		each(func(column string) string { return row[slices.Index(t.Columns, column)] })
	}
}
