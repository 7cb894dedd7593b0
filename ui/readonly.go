package ui

import (
	"slices"
	"strings"

	"tarpside/ui/parts"
	"tarpside/ui/words"
)

// readsOnly tells whether this window can log nothing.
func (n *now) readsOnly() bool { return n.pic.ReadOnly != "" }

// whyShut is said on a key that a window which only reads cannot follow.
func whyShut() string { return parts.Or(words.L("this window only reads"), words.L("only reads")) }

// shutKey is a key whose act cannot happen here.
func (n *now) shutKey(v parts.KeyView) parts.KeyView {
	if n.readsOnly() {
		v.Off, v.Tone, v.Second = true, parts.Usual, whyShut()
	}
	return v
}

// shutHold is shutKey for a key that is held.
func (n *now) shutHold(v parts.HoldView) parts.HoldView {
	if n.readsOnly() {
		v.Off, v.Tone, v.Second = true, parts.Usual, whyShut()
	}
	return v
}

// shutRow is shutKey for a row of a list.
func (n *now) shutRow(v parts.RowView) parts.RowView {
	if n.readsOnly() {
		v.Off, v.Go = true, ""
	}
	return v
}

// onlyReads shuts, in a window that can log nothing, every key of some nodes
// that would log; free are those that only show something else. An id that
// ends in "*" stands for all that begin so, a kind before it as a tree tells it.
func (n *now) onlyReads(top node, free ...string) node {
	if !n.readsOnly() {
		return top
	}
	return n.shut(top, func(kind, id string) bool {
		if kind != "" && kind != parts.KindAct {
			id = kind + ":" + id
		}
		return slices.ContainsFunc(free, func(f string) bool {
			head, any := strings.CutSuffix(f, "*")
			return f == id || any && strings.HasPrefix(id, head)
		})
	})
}

func (n *now) shut(x node, free func(kind, id string) bool) node {
	switch v := x.view.(type) {
	case parts.KeyView:
		if !free(v.Kind, x.id) {
			x.view = n.shutKey(v)
		}
	case parts.HoldView:
		x.view = n.shutHold(v)
	case parts.RowView:
		if !v.Off && !free(v.Kind, x.id) {
			x.view = n.shutRow(v)
		}
	case parts.AnswerView:
		v.Off = true
		x.view = v
	case padView:
		x.view = padView{done: parts.Usual, shut: true}
	case parts.StripView:
		if v.Keys[0].ID == "undo" {
			v.Keys[0] = parts.StripKey{}
			x.view = v
		}
	}
	kids := make([]node, len(x.kids))
	for i, k := range x.kids {
		kids[i] = n.shut(k, free)
	}
	if x.kids != nil {
		x.kids = kids
	}
	return x
}
