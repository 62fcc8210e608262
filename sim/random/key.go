package random

// Key names a stream: the same station and purpose always give the same key.
// Compute it once, when the line is loaded. It is the 64-bit FNV-1a hash
// (Fowler, Noll, Vo) of station, a zero byte and purpose, passed through the
// finaliser of SplitMix64 (Steele, Lea, Flood 2014).
func Key(station, purpose string) uint64 {
	h := uint64(0xcbf29ce484222325)
	h = fnv1a(h, station)
	h = fnv1a(h, "\x00")
	h = fnv1a(h, purpose)
	return mix(h)
}

func fnv1a(h uint64, s string) uint64 {
	for i := 0; i < len(s); i++ {
		h = (h ^ uint64(s[i])) * 0x100000001b3
	}
	return h
}

// golden is 2^64 divided by the golden ratio, the step of SplitMix64.
const golden = 0x9e3779b97f4a7c15

// mix is the finaliser of SplitMix64 (Steele, Lea, Flood 2014, variant 13 of
// Stafford): a bijection in which every input bit moves about half the output.
func mix(h uint64) uint64 {
	h = (h ^ h>>30) * 0xbf58476d1ce4e5b9
	h = (h ^ h>>27) * 0x94d049bb133111eb
	return h ^ h>>31
}
