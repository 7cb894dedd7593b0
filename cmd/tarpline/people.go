package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"tarpside/board"
	"tarpside/model"
)

func whereLines(p *board.Picture, t board.Table) []string {
	if len(t.Rows) == 0 {
		return []string{"Everything is home."}
	}
	return pick(t, "item=item,name=name,rig=rig,>n=quantity,where=place,who=holder", spoken(p.State.Dept))
}

func bringBackLines(p *board.Picture, t board.Table) []string {
	if len(t.Rows) == 0 {
		return []string{"Nobody else has anything of ours."}
	}
	return pick(t, "item=item,name=name,of=rig,>n=quantity,where=where,who=holder", spoken(p.State.Dept))
}

func readyLines(p *board.Picture, t board.Table) []string {
	if len(t.Rows) == 0 {
		return []string{"Every rig has all of what it may be sent for."}
	}
	t.Columns = append(slices.Clone(t.Columns), "name")
	for i, r := range p.State.Ready() {
		t.Rows[i] = append(slices.Clone(t.Rows[i]), familyName(p, r))
	}
	return pick(t, "rig=rig,family=family,such as=name,>has=full,>needs=least_usable,>ready=ready_now,status=status", asIs)
}

// familyName is the first critical line of a family.
func familyName(p *board.Picture, r model.ReadyRow) string {
	for _, i := range r.Lines {
		if it := &p.State.Dept.Items[i]; it.Critical {
			return it.Short()
		}
	}
	return r.Family
}

func restockLines(_ *board.Picture, t board.Table) []string {
	if len(t.Rows) == 0 {
		return []string{"Nothing is to be replaced."}
	}
	t.Columns = append(slices.Clone(t.Columns), "order")
	order, action := slices.Index(t.Columns, "order_qty_in_packs_of_pack"), slices.Index(t.Columns, "action")
	for i, row := range t.Rows {
		say := row[order]
		switch row[action] {
		case "ok":
			say = ""
		case "no stock line":
			say = "not in the store"
		}
		t.Rows[i] = append(slices.Clone(row), say)
	}
	return pick(t, "what=name,of=by_rig,>replace=total_to_replace,>by count=found_at_count,>from store=issue_from_station,"+
		">store left=station_after,>owed=backorder,>order=order", blankZero)
}

func asIs(_, text string) string { return text }

// blankZero leaves a nought out, so that what is something stands out.
func blankZero(_, text string) string {
	if text == "0" {
		return ""
	}
	return text
}

func loadUpLines(p *board.Picture, t board.Table, rig string) []string {
	if len(t.Rows) == 0 {
		return []string{"Nothing of " + party(p.State.Dept, rig) + " is on the tarp."}
	}
	compartment := slices.Index(t.Columns, "compartment")
	t.Rows = slices.Clone(t.Rows)
	before := ""
	for i, row := range t.Rows {
		door := ""
		if row[compartment] != before {
			before = row[compartment]
			door = strings.TrimSuffix(before+", "+doorSide(p.State.Dept, rig, before), ", ")
		}
		t.Rows[i] = append(slices.Clone(row), door)
	}
	t.Columns = append(slices.Clone(t.Columns), "door")
	return pick(t, "door=door,>step=step,item=item,name=name,>n=quantity,slot=slot,>lb each=weight_lb_with_contents,lift=two_person",
		func(column, text string) string {
			if column == "two_person" {
				return map[string]string{"yes": "two people"}[text]
			}
			return text
		})
}

// doorSide says where a door is.
func doorSide(d *model.Department, rig, compartment string) string {
	for _, s := range d.Slots {
		if s.Rig == rig && s.Compartment == compartment {
			switch s.Side {
			case "left":
				return "driver side"
			case "right":
				return "officer side"
			}
			return s.Side
		}
	}
	return ""
}

func leavingLines(p *board.Picture, t board.Table, rig string) []string {
	d := p.State.Dept
	name := party(d, rig)
	out := []string{"All of " + name + " is home, or was used."}
	if len(t.Rows) > 0 {
		out = pick(t, "item=item,name=name,>n=quantity,where=where", spoken(d))
	}
	var carried []string
	for _, r := range p.State.BringBack() {
		if r.Place.Kind == model.Riding && r.Place.Name == rig {
			carried = append(carried, count(&d.Items[r.Line], r.Quantity)+" ("+d.Items[r.Line].Rig+")")
		}
	}
	if len(carried) > 0 {
		out = append(append(out, ""), hang("Carries for others: ", strings.Join(carried, dot))...)
	}
	return out
}

// count is so many pieces of a line in words.
func count(it *model.Item, n int) string {
	if it.Quantity == 1 {
		return it.Name
	}
	return fmt.Sprintf("%d %s", n, it.Name)
}

func proofLines(p *board.Picture, t board.Table) []string {
	out := pick(t, "item=item,name=name,>all=quantity,>home=home,>tarp=tarp,>at=at,>kit=kit,>with=with,>rid=riding,>chg=charging,"+
		">bag=bagged,>use=used,>unx=unexplained,>lost=lost", blankZero)
	return append(append(out, ""), balances(p)...)
}

// balances are the trial balance of the scene, and that of each rig.
func balances(p *board.Picture) []string {
	out := hang("All   ", p.ProofLine(""))
	for _, r := range p.State.Dept.Rigs {
		out = append(out, hang(fmt.Sprintf("%-6s", r.ID), p.ProofLine(r.ID))...)
	}
	return out
}

// glanceLines go place by place, in each rig by rig, critical lines first.
func glanceLines(p *board.Picture, t board.Table) []string {
	if len(t.Rows) == 0 {
		return []string{"Nothing is out."}
	}
	at := func(row []string, column string) string { return row[slices.Index(t.Columns, column)] }
	var out []string
	for rows := t.Rows; len(rows) > 0; {
		n := 1
		for n < len(rows) && at(rows[n], "place") == at(rows[0], "place") {
			n++
		}
		place := at(rows[0], "place")
		if len(out) > 0 {
			out = append(out, "")
		}
		out = append(out, fmt.Sprintf("%s: %s, %s%s", sayPlace(p.State.Dept, place), many(at(rows[0], "lines"), "line"),
			many(at(rows[0], "pieces"), "piece"), meaning(p.State.Dept, place)))
		for band := rows[:n]; len(band) > 0; {
			k := 1
			for k < len(band) && at(band[k], "rig") == at(band[0], "rig") {
				k++
			}
			out = append(out, hang(fmt.Sprintf("  %-5s", at(band[0], "rig")), tools(p, t, band[:k]))...)
			band = band[k:]
		}
		rows = rows[n:]
	}
	return append(out, couldNot(p)...)
}

// tools names the lines of some rows of the glance, critical ones first.
func tools(p *board.Picture, t board.Table, rows [][]string) string {
	item, quantity := slices.Index(t.Columns, "item"), slices.Index(t.Columns, "quantity")
	var first, rest []string
	for _, row := range rows {
		i := p.State.Dept.ItemIndex(row[item])
		it := &p.State.Dept.Items[i]
		words := it.Short()
		if it.Quantity > 1 {
			words = row[quantity] + " " + words
		}
		if c := p.State.Line(i).Contest; c != nil {
			words += " (contested)"
		}
		if it.Critical {
			first = append(first, words)
		} else {
			rest = append(rest, words)
		}
	}
	return strings.Join(append(first, rest...), dot)
}

// couldNot is a line for each rig that could not do all if it were sent now.
func couldNot(p *board.Picture) []string {
	words := map[string][]string{}
	for _, r := range p.State.Ready() {
		if !r.Enough {
			words[r.Rig] = append(words[r.Rig], familyName(p, r))
		}
	}
	var out []string
	for _, rig := range p.State.Dept.Rigs {
		if w := words[rig.ID]; len(w) > 0 {
			out = append(out, hang(fmt.Sprintf("  %-5s", rig.ID), "goes without "+strings.Join(w, dot))...)
		}
	}
	if len(out) > 0 {
		out = append([]string{"", "If sent now"}, out...)
	}
	return out
}

// meaning is what a place of the scene means.
func meaning(d *model.Department, place string) string {
	for _, m := range d.Places {
		if place == string(model.At)+":"+m.Place {
			return " (" + m.Meaning + ")"
		}
	}
	return ""
}

func many(n, noun string) string {
	if k, err := strconv.Atoi(n); err == nil && k == 1 {
		return n + " " + noun
	}
	return n + " " + noun + "s"
}
