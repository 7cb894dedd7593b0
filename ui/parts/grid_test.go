package parts

import (
	"testing"

	"fyne.io/fyne/v2"
	"pgregory.net/rapid"
)

func TestAnEvenGridSharesItsCellsOutAndStaysInItsRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 40).Draw(t, "cells")
		size := fyne.NewSize(float32(rapid.IntRange(300, 1900).Draw(t, "wide")), float32(rapid.IntRange(200, 1100).Draw(t, "high")))
		cell := fyne.NewSize(210, 96)
		s := shapeOf(size, cell, 0, 8, n)
		if s.height > size.Height {
			return // it scrolls, and is left as it is
		}
		e := s.even(size, n)
		rows := (n + e.cols - 1) / e.cols
		if was := (n + s.cols - 1) / s.cols; rows != was {
			t.Fatalf("%d rows, want %d", rows, was)
		}
		if last := n - (rows-1)*e.cols; rows > 1 && e.cols-last >= rows {
			t.Fatalf("%d in the last of %d rows of %d: another row could give some", last, rows, e.cols)
		}
		if e.cellW < s.cellW || e.cellH < s.cellH {
			t.Fatalf("cells of %vx%v were %vx%v", e.cellW, e.cellH, s.cellW, s.cellH)
		}
		if w := float32(e.cols)*(e.cellW+8) - 8; w > size.Width+0.5 || e.height > size.Height+0.5 {
			t.Fatalf("%vx%v in a room of %v", w, e.height, size)
		}
	})
}
