// Package tarpsheet reads what was written by hand on the tarp sheet as acts, to
// be entered in the log afterwards. It decides what a line means from where
// its writer, who had paper only, knew the pieces to be.
package tarpsheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"tarpside/model"
	"tarpside/model/code"
)

// Unknown is what stands in a cell that cannot be read any more. A question
// mark says the same.
const Unknown = "unknown"

// InWords is a cell of a piece that no table has: it is kept in the words of
// the sheet.
func InWords(written string) string { return Unknown + ": " + written }

// Words are the words of such a cell; false for any other.
func Words(cell string) (string, bool) {
	head, rest, ok := strings.Cut(cell, ":")
	rest = plain(rest)
	return rest, ok && rest != "" && strings.EqualFold(strings.TrimSpace(head), Unknown)
}

// A Line is one line of a tarp sheet as it was written. Rig only tells pieces
// of one name apart; From may be blank: then it is where the writer knew the
// piece to be.
type Line struct {
	Row                                       int
	Time, Quantity, Piece, Rig, From, To, Who string
}

// A Fault is a cell that cannot be what was written. Row is the line's.
type Fault struct {
	Row                  int
	Column, Wrong, Right string
}

// A Written is a line as it is understood: when, and which act once the place
// it came from is known.
type Written struct {
	Row  int
	Time time.Time // the minute; for an unknown time that of the line before
	act  model.Act
	to   model.PlaceKind
}

// Read reads lines written in a scene, the minutes as a clock in start's zone
// shows them ("19:42") or as minutes since start ("52"). Lines that can be
// read at all come back in their order, with every fault.
func Read(d *model.Department, start, now time.Time, lines []Line) (out []Written, faults []Fault) {
	r := reader{d: d, start: start, now: now, last: start}
	for _, l := range lines {
		if before := len(r.faults); l.blank() {
			continue
		} else if w := r.line(l); len(r.faults) == before {
			out = append(out, w)
		}
	}
	return out, r.faults
}

// ByTime is the lines by their minutes; within one they stay in their order.
func ByTime(lines []Written) []Written {
	out := slices.Clone(lines)
	slices.SortStableFunc(out, func(a, b Written) int { return a.Time.Compare(b.Time) })
	return out
}

func (l Line) blank() bool {
	return strings.TrimSpace(l.Time+l.Quantity+l.Piece+l.Rig+l.From+l.To+l.Who) == ""
}

type reader struct {
	d          *model.Department
	start, now time.Time
	last       time.Time
	row        int
	unread     []string // columns of the line that nobody can read
	faults     []Fault
}

func (r *reader) bad(column, wrong, right string) {
	r.faults = append(r.faults, Fault{r.row, column, wrong, right})
}

// unreadable tells whether a cell says that it cannot be read, and notes it.
func (r *reader) unreadable(column, cell string) bool {
	if cell != "?" && !strings.EqualFold(cell, Unknown) {
		return false
	}
	r.unread = append(r.unread, column)
	return true
}

func (r *reader) line(l Line) Written {
	r.row, r.unread = l.Row, nil
	w := Written{Row: l.Row, Time: r.time(strings.TrimSpace(l.Time))}
	w.act.Item = r.piece(strings.TrimSpace(l.Piece), strings.TrimSpace(l.Rig))
	w.act.Quantity = r.quantity(strings.TrimSpace(l.Quantity))
	w.act.From = r.from(strings.TrimSpace(l.From))
	w.act.To, w.to = r.to(strings.TrimSpace(l.To))
	w.act.Holder = r.who(strings.TrimSpace(l.Who))
	w.act.Note = "from paper"
	if len(r.unread) > 0 {
		w.act.Note += "; could not be read: " + strings.Join(r.unread, ", ")
	}
	return w
}

const timeRight = "the time as 19:42, the minute of the scene as 52, or unknown"

func (r *reader) time(cell string) time.Time {
	if r.unreadable("time", cell) {
		return r.last
	}
	var t time.Time
	if minute, err := strconv.Atoi(cell); err == nil && minute >= 0 && minute <= 100_000 {
		t = r.start.Add(time.Duration(minute) * time.Minute)
	} else if clock, err := time.Parse("15:04", cell); err == nil {
		y, m, d := r.start.Date()
		t = time.Date(y, m, d, clock.Hour(), clock.Minute(), 0, 0, r.start.Location())
		if t.Before(r.start.Truncate(time.Minute)) {
			t = t.AddDate(0, 0, 1) // past midnight
		}
	} else {
		r.bad("time", strconv.Quote(cell)+" is no time", timeRight)
		return r.last
	}
	if t.After(r.now) {
		r.bad("time", fmt.Sprintf("%s is before the scene was opened, at %s, or still to come", cell, r.start.Format("15:04")), "a time from then to now")
		return r.last
	}
	r.last = t
	return t
}

func (r *reader) quantity(cell string) int {
	switch n, err := strconv.Atoi(cell); {
	case cell == "" || r.unreadable("quantity", cell):
		return 1 // one at least
	case err != nil || n < 1:
		r.bad("quantity", strconv.Quote(cell)+" is no number of pieces", "1 or more, or unknown")
		return 1
	default:
		return n
	}
}

// piece is the item that a cell names: by its id, its label, its mark, or one
// of its names.
func (r *reader) piece(cell, rig string) string {
	if r.unreadable("piece", cell) {
		return Unknown
	}
	if said, ok := Words(cell); ok {
		return said
	}
	if what, id, err := code.Find(r.d, cell); err == nil && what == code.Piece {
		return id
	}
	var found []string
	for i := range r.d.Items {
		it := &r.d.Items[i]
		if rig != "" && !strings.EqualFold(rig, it.Rig) {
			continue
		}
		if strings.EqualFold(it.ID, cell) {
			return it.ID
		}
		for _, name := range append([]string{it.Name, it.ShortName, it.Mark}, it.OtherNames...) {
			if name != "" && strings.EqualFold(plain(name), plain(cell)) {
				found = append(found, it.ID)
				break
			}
		}
	}
	switch len(found) {
	case 1:
		return found[0]
	case 0:
		r.bad("piece", "no piece is called "+strconv.Quote(cell), "its id, its name, unknown, or "+InWords("what is written"))
	default:
		r.bad("piece", fmt.Sprintf("%d pieces are called %q", len(found), cell), "one of "+strings.Join(found[:min(len(found), 6)], ", "))
	}
	return Unknown
}

func plain(s string) string { return strings.Join(strings.Fields(s), " ") }

func (r *reader) from(cell string) string {
	if cell == "" || r.unreadable("from", cell) {
		return ""
	}
	text, _ := r.place("from", cell)
	return text
}

func (r *reader) to(cell string) (string, model.PlaceKind) {
	if r.unreadable("to", cell) {
		return "at:" + Unknown, model.At
	}
	return r.place("to", cell)
}

// words are what people write for the places that have no name of their own.
var words = map[string]model.PlaceKind{
	"tarp": model.Tarp, "back on tarp": model.Tarp, "home": model.Home, "back home": model.Home, "rig": model.Home, "slot": model.Home,
	"used": model.Used, "used up": model.Used, "charger": model.Charging, "bag": model.Bagged,
}

// place is the place that a cell names: a word, a place or an agency of the
// tables, or a place as the log writes it, which may be a new one.
func (r *reader) place(column, cell string) (string, model.PlaceKind) {
	if k, ok := words[strings.ToLower(plain(cell))]; ok {
		return string(k), k
	}
	if p, err := model.ParsePlace(cell); err == nil && p.Ground == "" {
		return p.String(), p.Kind
	}
	for _, p := range r.d.Places {
		if strings.EqualFold(p.Place, cell) {
			return "at:" + p.Place, model.At
		}
	}
	for _, a := range r.d.Agencies {
		if strings.EqualFold(a.Code, cell) || strings.EqualFold(a.Name, cell) {
			return "with:" + a.Code, model.With
		}
	}
	r.bad(column, "no place is called "+strconv.Quote(cell), "tarp, home, a place or an agency of the tables, at: and a word for a new place, or unknown")
	return "at:" + Unknown, model.At
}

// who is the holder: a member by id or name, a rig's crew, or the words as
// they stand.
func (r *reader) who(cell string) string {
	if cell == "" {
		return ""
	}
	if r.unreadable("who", cell) {
		return Unknown
	}
	for _, m := range r.d.Members {
		if strings.EqualFold(m.ID, cell) || strings.EqualFold(m.Name, cell) {
			return m.ID
		}
	}
	return cell
}
