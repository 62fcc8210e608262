package stations

// carton is what stands on a pitch or lies in a buffer: a place that is empty for a reason, a good carton, or a reject.
type carton struct {
	id   int32
	why  Reason // why the place is empty, or why the carton is a reject
	kind cartonKind
}

type cartonKind uint8

const (
	empty cartonKind = iota
	good
	reject
)

func (c carton) present() bool { return c.kind != empty }
