package main

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"tarpside/board/stores"
	"tarpside/model"
	"tarpside/ui/parts"
)

// touch is a tap as fast as the X server takes it.
func (r *running) touch(kind, id string) {
	r.t.Helper()
	var p parts.Part
	r.wait(kind+" "+id, func() (ok bool) { p, ok = r.find(kind, id); return })
	xdotool(r.t, "mousemove", fmt.Sprint(p.X+p.W/2), fmt.Sprint(p.Y+p.H/2), "mousedown", "1", "mouseup", "1")
}

// hour is somebody who logs the demo's first hour with a finger.
type hour struct {
	*running
	picked int
	by     string            // who logs
	names  map[string]string // of lines and members, as the screen shows them
	at     map[string]string // where each line went last
	sent   time.Time         // when something was seen to go to a place
}

// word is what of a name is typed to find it: its first word.
func word(name string) string {
	return strings.ToLower(strings.FieldsFunc(name, func(r rune) bool { return r < 'A' || r > 'z' })[0])
}

// seek finds a piece that lies on no panel by letters, as few as it takes, and
// picks it.
func (h *hour) seek(item string) {
	h.t.Helper()
	h.touch("act", "find")
	typed := ""
	for _, l := range word(h.names[item]) {
		typed += string(l)
		h.touch("act", string(l))
		h.wait("the letters "+typed, func() bool { return strings.EqualFold(h.says("typed"), typed) })
		if h.onPage("piece", item) {
			break
		}
	}
	h.page("piece", item)
}

func (h *hour) onPage(kind, id string) bool { _, ok := h.find(kind, id); return ok }

// page turns pages until a tile is there, and touches it.
func (h *hour) page(kind, id string) {
	h.t.Helper()
	for k := 0; !h.onPage(kind, id); k++ {
		more, ok := h.find("act", "more")
		if !ok || k > 20 {
			h.t.Fatalf("no %s %s on any page: %v", kind, id, h.read())
		}
		before := h.read()
		xdotool(h.t, "mousemove", fmt.Sprint(more.X+more.W/2), fmt.Sprint(more.Y+more.H/2), "mousedown", "1", "mouseup", "1")
		h.wait("the next page", func() bool { return !slices.Equal(before, h.read()) })
	}
	h.touch(kind, id)
}

// look shows what is at a place. A touch that comes at once after pieces went
// there is taken for a finger that bounced, so it comes a second later.
func (h *hour) look(place string) {
	h.t.Helper()
	open := func() bool { p, _ := h.find("place", place); return p.State == "open" }
	for k := 0; k < 3 && !open(); k++ {
		time.Sleep(time.Until(h.sent.Add(time.Second)))
		h.touch("place", place)
		for end := time.Now().Add(15 * time.Second); time.Now().Before(end) && !open(); time.Sleep(10 * time.Millisecond) {
		}
	}
	if !open() {
		h.t.Fatalf("%s does not open: %v", place, h.read())
	}
}

// pick touches a piece where it is.
func (h *hour) pick(item, from string) {
	h.t.Helper()
	kit, inKit := strings.CutPrefix(from, "kit:")
	switch {
	case from == "home":
		h.seek(item)
	case inKit:
		if !h.onPage("piece", item) {
			h.look(h.at[kit])
			h.page("piece", kit)
			h.touch("act", "open-kit")
			h.wait("what is in "+kit, func() bool { return !h.onPage("act", "open-kit") })
		}
		h.page("piece", item)
	default:
		if h.picked == 0 {
			h.look(from)
		}
		h.page("piece", item)
	}
	h.picked++
	h.wait(item+" to be picked", func() bool {
		says := h.says("picked")
		return h.picked == 1 && says != "" || strings.Contains(says, fmt.Sprintf("%d lines picked", h.picked))
	})
}

// handful sets the number of what was picked last: by its key, or typed.
func (h *hour) handful(n int) {
	h.t.Helper()
	switch {
	case n == 1 && !h.onPage("quantity", "1") && !h.onPage("quantity", "number"): // a single piece has no keys
		return
	case h.onPage("quantity", fmt.Sprint(n)):
		h.touch("quantity", fmt.Sprint(n))
		h.wait("the handful", func() bool { p, _ := h.find("quantity", fmt.Sprint(n)); return p.State == "set" })
		return
	}
	h.touch("quantity", "number")
	for _, d := range fmt.Sprint(n) {
		h.touch("digit", string(d))
	}
	h.wait("the number", func() bool { return h.says("number") == fmt.Sprint(n) })
	h.touch("digit", "done")
	h.wait("the handful", func() bool { p, _ := h.find("quantity", "number"); return p.State == "set" })
}

// send touches the place that what is picked goes to.
func (h *hour) send(place string) {
	h.t.Helper()
	h.touch("place", place)
	h.picked = 0
	h.wait("what was picked to go to "+place, func() bool { return h.says("picked") == "" })
	h.sent = time.Now()
}

// mend corrects the last entry: another place.
func (h *hour) mend(place string) {
	h.t.Helper()
	h.answered()
	h.touch("act", "entries")
	id := ""
	h.wait("the last entries", func() bool {
		for _, p := range h.read() {
			if strings.HasPrefix(p.ID, "entry-") {
				id = p.ID
				return p.Kind == "act"
			}
		}
		return false
	})
	h.touch("act", id)
	h.touch("place", place)
	h.wait("the correction", func() bool { return h.onPage("act", "undo") })
}

// answered puts a reply away that stands in the strip.
func (h *hour) answered() {
	h.t.Helper()
	if h.onPage("act", "seen") {
		h.touch("act", "seen")
	}
	h.wait("the last line", func() bool { return h.onPage("act", "entries") })
}

// rests waits until a part is on screen and has stood still for a while.
func (h *hour) rests(kind, id string) {
	h.t.Helper()
	var at parts.Part
	since := time.Now()
	h.wait(id+" to stand still", func() bool {
		p, ok := h.find(kind, id)
		if !ok || p != at {
			at, since = p, time.Now()
		}
		return ok && time.Since(since) > 300*time.Millisecond
	})
}

// choose touches a member of a list until the list is gone. A touch that only
// stopped a list that rolled is made again, but not before it has had long to
// work: else the second one would fall on what is under the list.
func (h *hour) choose(by string) {
	h.t.Helper()
	listed := func() bool { return h.onPage("act", "back") && h.onPage("member", by) }
	for k := 0; k < 5 && listed(); k++ {
		h.rests("member", by)
		h.touch("member", by)
		for end := time.Now().Add(15 * time.Second); time.Now().Before(end) && listed(); time.Sleep(10 * time.Millisecond) {
		}
	}
	h.wait("the end of the list", func() bool { return !h.onPage("act", "back") })
}

// as puts the tarp and the tablet into somebody's hands. A list that still
// rolls under the finger gives another name: then it is asked for once more.
func (h *hour) as(by string) {
	h.t.Helper()
	h.touch("screen", "more")
	for _, key := range []string{"relieve", "who"} {
		var now parts.Part
		h.wait("More", func() (ok bool) { now, ok = h.find("act", key); return })
		if strings.Contains(now.Text, h.names[by]) {
			continue
		}
		h.touch("act", key)
		h.wait("the members", func() bool { return h.onPage("act", "back") })
		for k := 0; k < 20 && !h.onPage("member", by); k++ {
			h.drag(600, 600, []int{-300, 300}[k/10])
		}
		h.choose(by)
	}
	h.touch("screen", "tarp")
	h.by = by
}

// drag moves a finger over the glass, and lets the screen follow.
func (r *running) drag(x, y, dy int) {
	r.t.Helper()
	args := []string{"mousemove", fmt.Sprint(x), fmt.Sprint(y), "mousedown", "1"}
	for k := 1; k <= 10; k++ {
		args = append(args, "mousemove", fmt.Sprint(x), fmt.Sprint(y+dy*k/10), "sleep", "0.02")
	}
	before := r.read()
	xdotool(r.t, append(args, "mouseup", "1")...)
	r.wait("the list to follow the finger", func() bool { return !slices.Equal(before, r.read()) })
}

// act does the rows of the script that one tap makes.
func (h *hour) act(rows []stores.SceneRow) {
	h.t.Helper()
	first := rows[0].Act
	if first.Item != "" && first.By != h.by {
		h.as(first.By)
	}
	switch first.Verb {
	case model.Open:
		h.touch("act", "open-scene")
		h.wait("the kinds of call", func() bool {
			for _, p := range h.read() {
				if strings.HasPrefix(p.ID, "open-") && p.ID != "open-scene" {
					h.touch(p.Kind, p.ID)
					return true
				}
			}
			return false
		})
		h.wait("the scene", func() bool { return h.onPage("act", "undo") })
	case model.Arrive:
		h.touch("screen", "more")
		h.touch("act", "arrive")
		h.touch("rig", first.Rig)
		h.wait(first.Rig+" to be here", func() bool { return h.onPage("act", "arrive") && !h.onPage("rig", first.Rig) })
		h.touch("screen", "tarp")
	case model.Correct:
		h.mend(first.To)
	case model.Settle:
		h.look(first.To)
		h.page("piece", first.Item)
		h.touch("act", "settle-"+first.To)
		h.wait("the end of the contest", func() bool { return !h.onPage("act", "settle-"+first.To) })
	default:
		for _, row := range rows {
			h.pick(row.Act.Item, row.Act.From)
			h.at[row.Act.Item] = first.To
			h.handful(row.Act.Quantity)
		}
		h.send(first.To)
	}
}

// moved tells whether a row moves pieces by hand in this hour. Readings, tags and
// notes move nothing, nor does the double tap that is refused.
func moved(row stores.SceneRow) bool {
	switch row.Act.Verb {
	case model.Note, model.CheckIt, model.Tag, model.Relieve: // who stages is set when somebody logs
		return false
	}
	return row.Seq != doubleTap
}
