package heat

func (r *Result) judge() {}
