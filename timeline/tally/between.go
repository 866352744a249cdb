package tally

import "math"

// Cluster is what was counted together and may hang together, such as all that was
// seen on one occasion: it belongs to one group as a whole.
type Cluster struct {
	Group int
	X, T  float64
}

// Between asks whether the rates of groups of clusters differ, when things counted in
// one cluster are not independent of each other. The labels of the groups are dealt anew
// over the clusters, from the seed: if the groups are alike, each deal is as likely as the
// one seen. Deals are compared by Deviance of the sums.
func Between(clusters []Cluster, groups, draws int, seed uint64) Test {
	label := make([]int, 0, len(clusters))
	used := make([]bool, groups)
	kinds := 0
	list := make([]Cluster, 0, len(clusters))
	for _, c := range clusters {
		if !(c.T > 0) {
			continue
		}
		list, label = append(list, c), append(label, c.Group)
		if !used[c.Group] {
			used[c.Group] = true
			kinds++
		}
	}
	x, t := make([]float64, groups), make([]float64, groups)
	deal := func() float64 {
		clear(x)
		clear(t)
		for i, c := range list {
			x[label[i]] += c.X
			t[label[i]] += c.T
		}
		return Deviance(x, t)
	}
	seen := deal()
	out := Test{P: 1, Statistic: seen}
	if kinds < 2 || seen == 0 {
		out.Exact = true
		return out
	}
	r := source(seed)
	limit := seen*(1-1e-9) - 1e-9
	far := 0
	for out.Draws < draws && far < enough {
		r.Shuffle(len(label), func(i, j int) { label[i], label[j] = label[j], label[i] })
		out.Draws++
		if deal() >= limit {
			far++
		}
	}
	out.P = float64(far+1) / float64(out.Draws+1)
	if far >= enough {
		out.P = float64(far) / float64(out.Draws)
	}
	return out
}

// Dispersion says how much more the counts of clusters vary than chance alone would
// make them at one common rate.
type Dispersion struct {
	X2    float64 // sum (x-mu)^2/mu, Pearson
	Free  int     // degrees of freedom
	Ratio float64 // X2 / Free: about 1 for chance alone
	P     float64 // of X2 as large, by the chi-squared distribution
}

// DispersionOf returns the dispersion; with fewer than two clusters, or nothing counted,
// Ratio is not a number and P is 1.
func DispersionOf(x, t []float64) Dispersion {
	d := Dispersion{Ratio: math.NaN(), P: 1}
	var sumX, sumT float64
	for i := range x {
		if t[i] > 0 {
			sumX, sumT = sumX+x[i], sumT+t[i]
			d.Free++
		}
	}
	d.Free--
	if d.Free < 1 || sumX == 0 {
		d.Free = max(d.Free, 0)
		return d
	}
	for i := range x {
		if t[i] > 0 {
			mu := sumX * t[i] / sumT
			d.X2 += (x[i] - mu) * (x[i] - mu) / mu
		}
	}
	d.Ratio = d.X2 / float64(d.Free)
	d.P = chiSquaredTail(d.X2, d.Free)
	return d
}
