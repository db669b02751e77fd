part-placement = **Pregunta { $place }**
day-ready-placement = Hoy no hay lección. Vamos a ver por dónde empezar: de 12 a 20 preguntas, y puedes parar a la mitad y seguir la próxima vez. Algunas serán de cosas que aún no has visto; dilo y ya está, eso ayuda igual. Nada de esto es una nota.
button-not-met = Esto no lo he visto
button-how-to-type = ¿Cómo se escribe?
lead-not-met = Bueno es saberlo.
not-for-you-no-hints = Aquí no hay pistas: solo se mira lo que ya está firme. Si no lo está, déjalo, no pasa nada.
placement-unread = No he podido leerlo, y no ha costado nada. Escríbelo otra vez o pulsa el botón.
placement-unread-examples = Así: { $examples }
placement-paused = { $asked ->
    [one] Una pregunta hecha, el resto la próxima vez. Gracias.
   *[other] { $asked } preguntas hechas, el resto la próxima vez. Gracias.
  }
placement-done = Eso es todo, { $name }: { $asked } preguntas. Gracias. Ahora tu tutor sabe por dónde empezar contigo.
placement-found = **{ $name }** ({ $household }) ha hecho la prueba de dónde empezar: { $asked } preguntas.
placement-found-start = Apunta a la lección { $n }, { $lesson }.
placement-found-all = Nada del curso parece nuevo. Háblalo con la familia antes de decidir nada.
placement-found-patch = Conviene reforzar por el camino: { $titles }. *Empezar ahí* pone más de esto en el repaso durante tres semanas.
placement-found-else = Es una mirada pequeña, no una nota, y tú conoces mejor a { $name }. Otro comienzo: */lesson*.
placement-sure = Según su propia cuenta es bastante seguro, cinco lecciones arriba o abajo.
placement-likely = Es probable, no seguro, cinco lecciones arriba o abajo.
placement-guess = Es poco más que una suposición.
button-begin-there = Empezar ahí
digest-placing = { $questions ->
    [0] **{ $name }** ha empezado a ver por dónde empezar.
    [one] **{ $name }** ha empezado a ver por dónde empezar: una pregunta de momento, el resto la próxima vez. Sin notas.
   *[other] **{ $name }** ha empezado a ver por dónde empezar: { $questions } preguntas de momento, el resto la próxima vez. Sin notas.
  }
digest-placed = **{ $name }** ha visto por dónde empezar: { $questions } preguntas, sin notas. Apunta a *{ $lesson }*; decide el tutor.
digest-placed-all = **{ $name }** ha visto por dónde empezar: { $questions } preguntas, sin notas. Nada del curso parecía nuevo; el tutor lo hablará contigo.
command-placement = Ver por dónde empezar: de 12 a 20 preguntas en lugar de la próxima lección. No es una nota.
line-placement = { $names }: el { $date_day } se ve por dónde empezar en lugar de una lección, de 12 a 20 preguntas, una media hora, de una vez o de dos. No es una nota.
line-place = { $name } empieza con la lección { $n }, *{ $title }*.
line-patch = Durante tres semanas más de: { $titles }.
why-placement-already = Para { $name } ya está previsto ver por dónde empezar. */holds* lo muestra.
holds-placement = ver por dónde empezar, { $key_days }
placement-found-safer = Mucho entre la lección { $n }, { $lesson }, y esa parece nuevo, aunque las lecciones siguientes apenas lo necesitan. Quien empieza en la { $n } no se pierde nada.
button-begin-at = Empezar en la lección { $n }
finish-at = **{ $name }** va por la lección { $n } de { $out_of }: *{ $lesson }*.
finish-at-end = **{ $name }** ya ha visto todas las lecciones del curso.
finish-taken = Días de lección en las últimas seis semanas: se dieron { $taken } de { $planned }.
finish-range = Si todo sigue así, el curso se termina entre el { $early } y el { $late }.
finish-wanted = Un año desde el primer día sería el { $day }. Otra meta: */meta* con un nombre y una fecha.
finish-wanted-own = Te gustaría terminarlo antes del { $day }.
finish-in-time = Da tiempo, incluso con alguna semana lenta.
finish-perhaps = Puede que dé tiempo. Lo deciden unas pocas semanas libres, y más tarde también está bien.
finish-later = Parece que será más tarde. No se pierde nada: el tutor puede quitar alguna lección extra, o simplemente dura más.
line-finish = { $names }: te gustaría terminar el curso antes del { $date_day }.
command-finish = Cuándo puede terminarse el curso, como intervalo; con una fecha, el día que se quiere.
half-year = **{ $name }** ({ $household }) lleva medio año de clase: noventa días.
half-year-wanted = Se quiere terminar: { $day }.
half-year-go-on = Da tiempo. Se sigue como hasta ahora.
half-year-leave-out-extras = Con todo va justo, y sin las lecciones extra da tiempo.
half-year-core = { $count ->
    [one] Una lección de las que faltan es extra: { $titles }.
   *[other] { $count } lecciones de las que faltan son extra: { $titles }.
  }
half-year-core-range = Sin ellas: se termina entre el { $early } y el { $late }.
half-year-slow-down = Incluso sin las lecciones extra dura más. Mejor despacio y firme que a tiempo: habla con la familia de otra fecha (*/meta*) o de otra semana (*/semana*).
half-year-yours = Tú conoces a { $name } mejor que una cuenta de días. */mapa* muestra lo que está firme.
button-leave-out = Quitar las lecciones extra
button-keep-extras = Dejarlas
line-leave-out-extras = { $name }: se quitan las lecciones extra que faltan: { $titles }.
digest-half-year = { $name } lleva medio año de clase. Si todo sigue así, el curso se termina entre el { $early } y el { $late }.
digest-long-break = Ahora no hay clase por un tiempo. Si quieren, diez minutos tres días por semana lo mantienen vivo: { $command }
days-unfinished = **{ $name }** ({ $household }) no ha terminado los últimos { $days } días de clase. Nada se acumula. Quizá convenga preguntar cómo va todo; un día corto o solo repaso es */corto { $who }*, */repaso { $who }*.
button-look-today = Verlo
button-small-next = Próximo día corto
ahead-head = Los próximos días de clase de **{ $name }**, tal como se ven hoy:
ahead-lesson = *{ $lesson }*.
ahead-lesson-part = *{ $lesson }*, día { $sitting } de { $sittings }.
ahead-test = **{ $title }**.
ahead-light = día ligero, sin lección nueva.
ahead-review-only = solo repaso.
ahead-small = día corto.
ahead-gentle = vuelta suave, sin lección nueva.
ahead-off-season = diez minutos entre cursos.
ahead-placement = ver por dónde empezar.
ahead-review = { $count ->
    [one] Un ejercicio de repaso: { $why }.
   *[other] { $count } ejercicios de repaso: { $why }.
  }
ahead-why-today = { $count } de la lección
ahead-why-yesterday = { $count } fallados el día anterior
ahead-why-recent = { $count } de lecciones nuevas
ahead-why-due = { $count } que no salían hace tiempo
ahead-why-fragile = { $count } que fallan a menudo
ahead-why-prerequisite = { $count } que piden las próximas lecciones
ahead-why-coverage = { $count } ausentes desde hace más tiempo
ahead-why-misstep = { $count } con un tropiezo repetido
ahead-why-mixed-in = { $count } intercalados
ahead-why-sure = { $count } seguros
ahead-why-comeback = { $count } que vuelven
ahead-why-tutor-asked = { $count } que has pedido
ahead-why-test = { $count } de una prueba
ahead-why-extra = { $count } extra
ahead-note = Solo el primer día es seguro; los demás dependen de lo que pase hasta entonces.
ahead-change = Para cambiar el primero: */mas { $who }*, */quitar { $who }*, */fijar { $who }*, */practice { $who }*, */cuantos { $who }*, */repaso { $who }*.
offseason-on = De acuerdo: mientras no haya clase, diez minutos los lunes, miércoles y viernes. Sin lecciones y sin cuentas. */verano off* lo termina.
offseason-off = Mientras no hay clase no llega nada. */verano on* da diez minutos tres días por semana.
line-offseason-on = { $names }: mientras no haya clase, diez minutos de repaso los lunes, miércoles y viernes.
line-offseason-off = { $names }: mientras no haya clase no llega nada.
why-offseason = Di si ha de estar activado o no: on, off.
command-offseason = Diez minutos tres días por semana mientras no hay clase, on u off.
day-done-catch-up = Esta semana quedó una lección esperando y hoy hay sitio. Si quieres: *{ $title }*.
button-catch-up = Hacer la lección
holds-finish-by = un día como meta, { $key_days }
holds-off-season = práctica mientras no hay clase, { $key_days }
study-head = **{ $test }** es el { $day }. No hay reloj, y nada que aprender de memoria.
study-new = Por primera vez se pregunta: { $titles }.
study-again = Si quieres, mirar hoy estas tarjetas ayuda más que cualquier otra cosa:
study-nothing = Todo lo que puede preguntar está firme ahora mismo. Lo mejor es acostarse pronto.
digest-study = El próximo día de clase hay **{ $test }**; la abre una persona mayor por la mañana.
digest-study-again = Conviene volver a mirar antes: { $titles }.
course-is-done = **{ $name }** ({ $household }) ha terminado todo el curso, también el final. Es el trabajo de un año.
course-done-next = Ya no llega ningún día por sí solo. La hoja muestra en qué se apoya el álgebra: firme, inseguro o no visto; */records { $who }* tiene todo para guardar o para la próxima escuela.
button-standing = La hoja para la familia
button-off-season = Diez minutos, tres días por semana
standing-here = En qué se apoya el álgebra, para **{ $name }**. Es una mirada pequeña a un año, no una nota.
standing-file = base
command-standing = La hoja para la familia: una docena de temas en que se apoya el álgebra, firme, inseguro o no visto.
nothing-course-over = El curso está terminado, entero. Si quieres mantenerlo vivo: */verano on*.
day-ready-strand = La semana de repaso, día { $n } de { $out_of }: *{ $strand }*. Después viene el final.
