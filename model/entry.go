package model

import (
	"strings"

	"github.com/google/uuid"
)

// Format is the version of the entry's stored form.
const Format = 1

// Verb is the word for an act.
type Verb string

// The verbs. What each does is said once, in the table of model/judge.
const (
	Open       Verb = "open"
	Arrive     Verb = "arrive"
	Note       Verb = "note"
	Relieve    Verb = "relieve"
	ClearUp    Verb = "clear_up"
	Close      Verb = "close"
	PullOff    Verb = "pull"
	Direct     Verb = "direct"
	Hand       Verb = "hand"
	MoveTo     Verb = "move"
	Return     Verb = "return"
	TakeOut    Verb = "take_out"
	Use        Verb = "use"
	Handover   Verb = "handover"
	Lend       Verb = "lend"
	Bag        Verb = "bag"
	Charge     Verb = "charge"
	Count      Verb = "count"
	Seen       Verb = "seen"
	Correct    Verb = "correct"
	Settle     Verb = "settle"
	CheckIt    Verb = "check"
	Tag        Verb = "tag"
	Override   Verb = "override"
	Stow       Verb = "stow"
	StowTagged Verb = "stow_tagged"
	Unstow     Verb = "unstow"
	Vouch      Verb = "vouch"
	Carry      Verb = "carry"
	TakeBack   Verb = "take_back"
	Look       Verb = "look"
	Found      Verb = "found"
	Locate     Verb = "locate"
	StopLook   Verb = "stop_looking"
	Match      Verb = "match"
	Release    Verb = "release"
	Accept     Verb = "accept"
	Leave      Verb = "leave"
	Restock    Verb = "restock"
	Recharge   Verb = "recharge"
	Clean      Verb = "clean"
	Repair     Verb = "repair"
	BringBack  Verb = "bring_back"

	// Stores changes the inventory; BlankNote takes a note's text away;
	// Setting changes a setting. They are acts at a desk, not of a scene.
	Stores    Verb = "stores"
	BlankNote Verb = "blank_note"
)

// AboutItem tells whether an act of the verb must name an item.
func (v Verb) AboutItem() bool {
	switch v {
	case Count, Settle, CheckIt, Override, Tag, Repair:
		return true
	}
	_, moving := Table[v]
	return moving
}

// Word is the first word of a reply.
type Word string

// The four words of a reply.
const (
	OK        Word = "ok"
	Warned    Word = "warned"
	Refused   Word = "refused"
	Contested Word = "contested"
)

// A Reply is given once, by the device that took the act, with what it then
// knew. Text says it in words: what is there and where the rest is.
type Reply struct {
	Word    Word     `json:"word"`
	Reasons []string `json:"reasons,omitempty"`
	Text    string   `json:"text,omitempty"`
}

// Has tells whether the reply carries the reason.
func (r Reply) Has(reason string) bool {
	for _, x := range r.Reasons {
		if x == reason {
			return true
		}
	}
	return false
}

// A Move is a quantity of one line going from one place to another.
type Move struct {
	Item string `json:"item"`
	N    int    `json:"n"`
	From Place  `json:"from"`
	To   Place  `json:"to"`
}

// A Verdict is how a stow was judged: the answers that an override waved
// through, those that failed or were missing and were taken as it is, and
// whether that put the pieces in doubt or out of service.
type Verdict struct {
	Waved  []string `json:"waved,omitempty"`  // "battery=70"
	Failed []string `json:"failed,omitempty"` // "dry=no", "clean unanswered"
	Open   []string `json:"open,omitempty"`   // the checks behind Waved and Failed
	Tagged bool     `json:"tagged,omitempty"` // home out of service
}

// An Act is what a person asks for: one row of a scene. From, To, Rig and the
// rest are as typed; the judge reads them. Quantity is Blank where the person
// gave none.
type Act struct {
	Verb     Verb   `json:"verb"`
	By       string `json:"by,omitempty"`
	Item     string `json:"item,omitempty"`
	Rig      string `json:"rig,omitempty"`
	Quantity int    `json:"quantity"`
	From     string `json:"from,omitempty"`
	To       string `json:"to,omitempty"`
	Holder   string `json:"holder,omitempty"`
	Reading  string `json:"reading,omitempty"`
	Note     string `json:"-"` // kept in a table of its own, so that it can be blanked
}

// An Entry is one act of one person as the log keeps it, with its reply and
// the moves that the judging worked out. Entries are never changed or removed.
type Entry struct {
	ID      uuid.UUID `json:"id"`
	Stamp   Stamp     `json:"stamp"`
	Typed   int64     `json:"typed,omitempty"`   // when it happened, Unix ms, where that differs from the stamp
	Entered int64     `json:"entered,omitempty"` // from paper: when it was typed in, Unix ms
	Device  string    `json:"-"`                 // the stamp's device
	Scene   string    `json:"scene,omitempty"`
	Tap     string    `json:"tap,omitempty"` // the entries of one tap share it
	Seen    Vector    `json:"seen,omitempty"`
	Mends   string    `json:"mends,omitempty"` // the entry that this one corrects
	Format  int       `json:"format"`
	Ahead   bool      `json:"ahead,omitempty"` // a clock far ahead of the one that took it in
	Act
	Reply   Reply           `json:"reply"`
	Moves   []Move          `json:"moves,omitempty"`
	Verdict *Verdict        `json:"verdict,omitempty"`
	Extra   int             `json:"extra,omitempty"`  // count: pieces beyond the books
	Takes   []string        `json:"takes,omitempty"`  // open: the scenes it follows
	Stores  *InventoryPatch `json:"stores,omitempty"` // what a stores act changes
}

// N is the entry's number on its own device, from 1.
func (e *Entry) N() int { return e.Seen[e.Stamp.Device] + 1 }

// At is when it happened, Unix milliseconds.
func (e *Entry) At() int64 {
	if e.Typed != 0 {
		return e.Typed
	}
	return e.Stamp.Wall
}

// Taken tells whether the entry was not refused.
func (e *Entry) Taken() bool { return e.Reply.Word != Refused }

// Words splits a reading at its semicolons, trimmed and in lower case.
func Words(reading string) []string {
	var out []string
	for _, w := range strings.Split(reading, ";") {
		if w = strings.ToLower(strings.TrimSpace(w)); w != "" {
			out = append(out, w)
		}
	}
	return out
}
