package board

import (
	"cmp"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"tarpside/board/stores"
	"tarpside/model"
	"tarpside/model/loadup"
	"tarpside/model/restock"
)

// A Table is one list of the board, the same on the screen, in a CSV file and
// on paper. Each row has a cell for each column.
type Table struct {
	Name    string
	Columns []string
	Rows    [][]string
}

// WriteCSV writes the table as RFC 4180 says, with a header, in UTF-8, each
// line ended by LF. Words that a spreadsheet would compute stand after an
// apostrophe.
func (t Table) WriteCSV(w io.Writer) error {
	c := csv.NewWriter(w)
	if err := c.Write(t.Columns); err != nil {
		return err
	}
	for _, row := range t.Rows {
		row = slices.Clone(row)
		for i, cell := range row {
			if _, err := strconv.ParseFloat(cell, 64); err != nil {
				row[i] = stores.Inert(cell)
			}
		}
		if err := c.Write(row); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

func table(name, columns string) Table {
	return Table{Name: name, Columns: strings.Split(columns, ",")}
}

func (t *Table) add(cells ...any) {
	row := make([]string, len(cells))
	for i, c := range cells {
		row[i] = fmt.Sprint(c)
	}
	t.Rows = append(t.Rows, row)
}

// place is a place as the tables print it. The tarp and the places of another
// scene than the one that is worked on have its name behind them.
func (p *Picture) place(at model.Place) string {
	text := at.String()
	if at.Kind != model.Tarp && at.Kind != model.At || at.Ground == p.State.Scene(p.Scene).Ground {
		return text
	}
	for _, sc := range p.State.Scenes() {
		if sc.Ground == at.Ground {
			return text + " (" + cmp.Or(sc.Name, "another scene") + ")"
		}
	}
	return text + " (another scene)"
}

// pounds prints a weight with one or two decimals.
func pounds(w float64) string {
	text := strconv.FormatFloat(math.Round(w*100)/100, 'f', -1, 64)
	if !strings.Contains(text, ".") {
		text += ".0"
	}
	return text
}

func yes(is bool) string {
	if is {
		return "yes"
	}
	return "no"
}

// Where is every line and real place but home, what is in kits included.
func (p *Picture) Where() Table {
	t := table("where", "item,name,rig,quantity,place,holder")
	for _, r := range p.State.Where() {
		it := &p.State.Dept.Items[r.Line]
		t.add(it.ID, it.Name, it.Rig, r.Quantity, p.place(r.Place), r.Holder)
	}
	return t
}

// Glance is what is deployed, place by place in the order of the proof: a row
// for each line that is not in a kit. Lines counts those rows of the place;
// pieces counts with what is in kits.
func (p *Picture) Glance() Table {
	t := table("glance", "place,lines,pieces,rig,item,name,quantity,holder")
	s := p.State
	lines, pieces := map[model.Place]int{}, map[model.Place]int{}
	for _, c := range s.Checkpoints() {
		lines[c.Place] += c.Lines
		pieces[c.Place] += c.Pieces
	}
	rows := s.Books()
	slices.SortStableFunc(rows, func(a, b model.PlaceRow) int {
		return cmp.Or(cmp.Compare(slices.Index(model.PlaceKinds, a.Place.Kind), slices.Index(model.PlaceKinds, b.Place.Kind)),
			strings.Compare(a.Place.Name, b.Place.Name), strings.Compare(a.Place.Ground, b.Place.Ground),
			strings.Compare(s.Dept.Items[a.Line].Rig, s.Dept.Items[b.Line].Rig))
	})
	for _, r := range rows {
		it := &s.Dept.Items[r.Line]
		t.add(p.place(r.Place), lines[r.Place], pieces[r.Place], it.Rig, it.ID, it.Name, r.Quantity, r.Holder)
	}
	return t
}

// LoadUp is the load order of a rig.
func (p *Picture) LoadUp(rig string) Table {
	t := table("loadup", "step,item,name,quantity,slot,compartment,lap,weight_lb_with_contents,two_person")
	for i, l := range loadup.List(p.State, rig, nil) {
		it := &p.State.Dept.Items[l.Line]
		t.add(i+1, it.ID, it.Name, l.Quantity, l.Slot, l.Door.Compartment, l.Door.Lap, pounds(l.WeightLb), yes(l.TwoPerson))
	}
	return t
}

// Leaving is what a rig that goes now does not have.
func (p *Picture) Leaving(rig string) Table {
	t := table("leaving", "item,name,quantity,where")
	for _, r := range p.State.Leaving(rig) {
		it := &p.State.Dept.Items[r.Line]
		t.add(it.ID, it.Name, r.Quantity, p.place(r.Place))
	}
	return t
}

// Ready is what each rig could not do, or only just, if it were sent now.
func (p *Picture) Ready() Table {
	t := table("ready", "rig,family,full,least_usable,ready_now,status")
	for _, r := range p.State.Ready() {
		status := "not ready"
		if r.Enough {
			status = "ready, short"
		}
		t.add(r.Rig, r.Family, r.Full, r.LeastUsable, r.Now, status)
	}
	return t
}

// Restock is what to replace, what the store gives and what to order.
func (p *Picture) Restock() Table {
	t := table("restock", "name,by_rig,used_logged_or_lost,found_at_count,total_to_replace,stock_id,station_before,"+
		"issue_from_station,station_after,backorder,reorder_point,action,order_qty_in_packs_of_pack")
	for _, r := range restock.List(p.State) {
		id, point, action := "", "", "no stock line"
		if r.Stock != nil {
			if id, point, action = r.Stock.ID, r.Point(), "ok"; r.Order > 0 {
				action = "ORDER"
			}
		}
		t.add(r.Name, r.ByRig(), r.Used, r.FoundAtCount, r.Total(), id, r.Before, r.Issue(), r.After(), r.Backorder(), point, action, r.Order)
	}
	return t
}

// BringBack is what agencies have and what rides on rigs that do not own it.
func (p *Picture) BringBack() Table {
	t := table("bringback", "item,name,rig,quantity,where,holder")
	for _, r := range p.State.BringBack() {
		it := &p.State.Dept.Items[r.Line]
		t.add(it.ID, it.Name, it.Rig, r.Quantity, p.place(r.Place), r.Holder)
	}
	return t
}

// Proof is the trial balance of every line over the kinds of place.
func (p *Picture) Proof() Table {
	t := table("proof", "item,name,quantity")
	for _, k := range model.PlaceKinds {
		t.Columns = append(t.Columns, string(k))
	}
	for _, r := range p.State.Proof() {
		it := &p.State.Dept.Items[r.Line]
		cells := []any{it.ID, it.Name, r.Quantity}
		for _, n := range r.By {
			cells = append(cells, n)
		}
		t.add(cells...)
	}
	return t
}

// Conservation is the proof added up to four sums.
func (p *Picture) Conservation() Table {
	t := table("conservation", "item,name,quantity,home_or_in_kit,elsewhere_known,used,lost_or_unexplained")
	for _, r := range p.State.Proof() {
		it := &p.State.Dept.Items[r.Line]
		sum := map[model.PlaceKind]int{}
		for i, k := range model.PlaceKinds {
			sum[k] = r.By[i]
		}
		home, used, gone := sum[model.Home]+sum[model.InKit], sum[model.Used], sum[model.Lost]+sum[model.Unexplained]
		all := 0
		for _, n := range r.By {
			all += n
		}
		t.add(it.ID, it.Name, r.Quantity, home, all-home-used-gone, used, gone)
	}
	return t
}

// Checkpoints is what of each rig lies where, at a moment: the minute is that
// since the scene opened, the clock is in the zone of the moment.
func (p *Picture) Checkpoints(at time.Time) Table {
	t := table("checkpoints", "minute,clock,rig,place,lines,pieces,weight_lb")
	minute := (at.UnixMilli() - p.State.Scene(p.Scene).Opened) / time.Minute.Milliseconds()
	for _, c := range p.State.Checkpoints() {
		t.add(minute, at.Format("15:04"), c.Rig, p.place(c.Place), c.Lines, c.Pieces, pounds(c.WeightLb))
	}
	return t
}

// EndState is all that the scene leaves to do.
func (p *Picture) EndState() Table {
	t := table("end_state", "item,name,rig,quantity,place,disposition")
	for _, r := range p.State.EndState() {
		it := &p.State.Dept.Items[r.Line]
		t.add(it.ID, it.Name, it.Rig, r.Quantity, p.place(r.Place), r.Words)
	}
	return t
}

// ProofLine is the trial balance of the scene in words and figures, for a rig
// or, with "", for all: "344 came off = 257 home again · ... · 0 unexplained".
// A term that is nought is left out, but for home again and unexplained.
func (p *Picture) ProofLine(rig string) string {
	a := p.State.Account(p.Scene, rig)
	out := fmt.Sprintf("%d came off = %d home again", a.CameOff, a.Home)
	for _, term := range []struct {
		n     int
		words string
	}{{a.Tarp, "on tarp"}, {a.Out, "out"}, {a.Elsewhere, "at another scene"}, {a.Carried, "carried"}, {a.With, "with others"},
		{a.Charging, "charging"}, {a.Bagged, "bagged"}, {a.Used, "used"}, {a.Lost, "lost"}} {
		if term.n != 0 {
			out += fmt.Sprintf(" · %d %s", term.n, term.words)
		}
	}
	return out + fmt.Sprintf(" · %d unexplained", a.Unexplained)
}
