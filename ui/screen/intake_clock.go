package screen

func (r *intakeRoom) askClock()   {}
func (r *intakeRoom) askColumns() {}
func (r *intakeRoom) askGauge()   {}
