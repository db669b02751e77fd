# A tutor's own items and lessons
own-head = Lo tuyo:
own-none = Todavía no hay nada tuyo guardado.
own-how = Un ejercicio es una línea: */own*, un nombre y luego *pregunta // respuesta // forma*. Una lección es un archivo: mándalo aquí con los nombres al lado. El número va con */give*.
own-item = ejercicio
own-lesson = lección
own-version-of = versión { $v } de { $count }
own-version-row = Versión { $v }, { $day }{ $now ->
    [yes] {" "}(vale ahora)
   *[no] {""}
  }
button-own-give = Dar: { $name }
button-own-back = Otra vez la versión { $v }
button-own-away = Guardar aparte
own-faults-head = *{ $title }* todavía no se sostiene. No ha cambiado nada. Para arreglar:
own-faults-head-typed = Eso todavía no se sostiene. No ha cambiado nada. Para arreglar:
own-faults-end = Arréglalo y mándalo otra vez.
own-fault-line = Línea { $n }:
file-comes = Estoy leyendo *{ $name }* y probando sus ejercicios. Tarda como mucho un minuto.
file-comes-full = Varios archivos tuyos esperan todavía. Manda *{ $name }* otra vez en unos minutos, por favor.

line-own-in = { $ask } → **{ $answer }**
line-own-choice = { $ask } Botones: { $names } → **{ $answer }**
line-own-lesson = **{ $name }**, { $date_day }: tu lección *{ $title }*, su ficha y cuatro ejercicios de ella. La lección del curso espera ese día.
line-own-kept = Tu lección *{ $title }* queda guardada. Todavía no la recibe nadie.
line-own-card = La ficha empieza así: { $text }
line-own-draw = Por ejemplo: { $ask } → **{ $answer }**
line-own-version = Una versión nueva de { $n }, *{ $title }*. Las versiones de antes se quedan, y lo ya preguntado se queda como estaba.
line-own-back = { $n }: vuelve a valer la versión { $v }, *{ $title }* (hasta ahora la { $before }).
line-own-stays = Lo que ya se dio o se preguntó se queda como estaba.
line-own-away = { $n }, *{ $title }*, se guarda aparte. Lo que se dio se queda.
note-own-like = Una respuesta puede ser como { $examples }
note-own-instead = Ocupa el lugar de un ejercicio de repaso. Si un día no hay sitio, espera hasta 30 días.
note-own-proved = { $count ->
    [one] Un tipo de ejercicio
   *[other] { $count } tipos de ejercicios
  }, { $draws } sorteos probados: cada respuesta se acepta, cada paso se sigue.
note-own-look = Merece una mirada, línea { $line }: { $what }
note-own-give = */give*, un nombre y su número se lo lleva a alguien. O manda el archivo otra vez con los nombres al lado.
note-own-who = No sé quién es «{ $words }», así que todavía no la recibe nadie. */give*, un nombre y su número lo hace.
why-own = Así: un nombre, luego *pregunta // respuesta*, y *// forma* si la forma importa. Un ejercicio por línea.
why-own-again = Así: su número, luego *pregunta // respuesta // forma*. O *v2* para su segunda versión, o *fuera*.
why-own-file = Una lección cambia cuando mandas su archivo otra vez con el mismo nombre. *v2* vuelve a poner su segunda versión.
why-own-lost = La lección { $n } no se puede sortear con el curso de ahora. Manda su archivo otra vez, por favor.
why-own-made = El día de { $name } ya está hecho. Lo tuyo llega el próximo día; deja la fecha.
why-no-such-own = No tienes nada tuyo con el número { $n }. */own* lo muestra todo.
why-no-such-version = { $n } tiene las versiones 1 a { $last }.
why-that-version = Esa versión es la que vale ahora.
why-give = Quién, y el número de lo tuyo: */own* lo muestra. Un segundo número da tantos ejercicios de una lección.
command-own = ejercicios y lecciones tuyos
command-give = dar algo tuyo
holds-own-lesson = tu lección *{ $title }*, { $key_days }
wish-own-item = un ejercicio tuyo: *{ $title }*
wish-own-lesson = tu lección *{ $title }*
why-own-number = El ejercicio { $n } es tuyo. */holds* lo termina.

# Tests that are set, and a second look
line-test = **{ $name }**, { $date_day }: *{ $title }*, { $count } ejercicios, unos { $minutes } minutos, sobre lecciones vistas hace al menos cinco días de clase.
line-second = **{ $name }**, { $date_day }: una segunda mirada a *{ $title }*, { $count } ejercicios con números nuevos sobre lo que no salió, unos { $minutes } minutos.
line-reopen = **{ $name }**: la prueba de hoy vuelve a estar abierta. Todas las respuestas se quedan; nada cuenta hasta que se entregue de nuevo.
line-reopen-closed = **{ $name }**: la prueba del { $date_day } vuelve a estar abierta. Todas las respuestas se quedan. Hasta que se entregue de nuevo vale el resultado que leyó la familia: { $right } de { $count }.
note-reopen-closed = Después, el resultado nuevo estará en el registro, en las cartas y en el mensaje de ese día, y madres y padres lo leen en una línea. El mensaje de aquella noche pudo mostrar respuestas de lo que no salió; si fue así, una segunda mirada con números nuevos dice más.
note-test-set = Ocupa el lugar de la lección y del repaso de ese día. Esa mañana la abre una madre, un padre o tú. No hay reloj ni pistas.
why-test-how = Un nombre, luego el número de la prueba (1 a { $last }) y un día si quieres; o *abrir*, o *reabrir*, con su día si ya pasó.
why-no-such-test = Todavía no hay prueba { $n }; la última que se puede poner es la { $last }.
why-test-too-early = { $name } ha visto todavía muy poco de lo que pide *{ $title }*, hace cinco días de clase o más.
why-test-set = Ya hay una prueba puesta para { $name }. */holds* la muestra.
why-no-test-today = { $name } no tiene prueba hoy.
why-handed-in = { $name } ya entregó la prueba de hoy. *reabrir* la abre otra vez.
why-not-reopened = { $name } no ha entregado ninguna prueba en los últimos { $days } días, o no ese día. */test* pone una otra vez con números nuevos.
why-reopened-already = La prueba de { $name } del { $date_day } ya está abierta; falta entregarla.
why-reopen-second = Ya hubo o está puesta una segunda mirada a la prueba de { $name } del { $date_day }, y se guía por el resultado que hay. Si solo está puesta, */holds* la quita; entonces la prueba se puede abrir.
why-no-test-yet = { $name } no ha entregado ninguna prueba en los últimos dos meses.
why-nothing-to-look-at = A { $name } no le faltó nada en la última prueba.
why-second-had = { $name } ya tuvo la única segunda mirada a esa prueba. Lo que aún vacila vuelve como ejercicios normales.
why-second-not-offered = Esa prueba no necesita una segunda mirada. Lo que faltó vuelve como ejercicios normales; quien enseña puede ponerla de todos modos.
command-test = poner una prueba, abrirla, abrirla otra vez
command-second = una segunda mirada a la última prueba
holds-test = una prueba, *{ $title }*, { $key_days }
holds-second-look = una segunda mirada a *{ $title }*, { $key_days }
wish-test = se puso una prueba
wish-second-look = se puso una segunda mirada
button-second-look = Una segunda mirada

# Dudas
doubt-working = No pude juzgar los pasos de **{ $student }** en un ejercicio de *{ $title }* ({ $day }):
doubt-reported = **{ $student }** cree que un ejercicio de *{ $title }* está mal ({ $day }):
doubt-many-missed = A varios de tus alumnos se les quedó sin resolver el mismo tipo de ejercicio de *{ $title }*. Puede que sea el ejercicio:
report-noted = Gracias por decirlo. { $tutor } lo mira. Sigue con el siguiente, o inténtalo otra vez.
report-again = { $tutor } ya lo tiene. Gracias.
button-report = Creo que este ejercicio está mal
command-report = decir que este ejercicio está mal
passed-reported = **{ $student }** ({ $household }) cree que este ejercicio de *{ $lesson }* está mal.

# A household goes to another tutor
line-handover = **{ $household }** ({ $names }) se ofrece a otra persona que enseña: hago un enlace para que lo pases.
note-handover = No cambia nada hasta que esa persona pulse *Hacerme cargo*; hasta entonces */undo* acaba con el enlace. Después las respuestas, los registros y los planes siguen con esa persona, y tú no ves nada más. Lo que pusiste para todos tus alumnos se queda contigo. Se avisa a las familias.
handover-asked = **{ $tutor }** te pasa la familia **{ $household }** ({ $names }). Verías sus respuestas, planearías sus días y leerías sus preguntas; { $tutor } ya no. Se avisa a la familia.
handover-taken = **{ $household }** está contigo desde ahora. */needs* muestra quién te necesita, */people* quiénes son.
handover-given = **{ $tutor }** se ha hecho cargo de **{ $household }**. Tú no ves nada más.
handover-parent = Desde ahora **{ $tutor }** enseña a { $household } y lee lo que leía la persona anterior. Lo que se guarda sigue igual. */privacy* dice qué es; */withdraw* lo para todo.
handover-left = Queda como estaba. El enlace vale todavía unos días.
handover-own = **{ $household }** ya está contigo. El enlace es para la otra persona.
handover-gone = Ese enlace ya no vale. Se puede hacer uno nuevo.
button-take-over = Hacerme cargo
command-handover = pasar una familia a otra persona que enseña

# Una respuesta que no cuenta desde ahora
line-reject-always = Desde ahora, «{ $typed }» no cuenta en ejercicios de este tipo de *{ $title }*, para todos tus alumnos. */holds* lo termina.
note-alike-counted = { $count ->
    [one] Lo mismo se escribió y contó una vez más en los últimos 60 días; eso queda como está.
   *[other] Lo mismo se escribió y contó { $count } veces más en los últimos 60 días; esas quedan como están.
  }
button-once-not = Esta vez no
button-not-from-now-on = Desde ahora no
holds-turned-down = «{ $typed }» no cuenta en un tipo de ejercicio de *{ $title }*, { $key_days }

exported-photos = { $count ->
    [one] Una foto de { $household }
   *[other] { $count } fotos de { $household }
  }, archivo { $part } de { $parts }.
privacy-months = **Cuánto tiempo:** las fotos y las respuestas tal como se escribieron se quitan a los { $months } meses. Los días, los minutos y los resultados quedan para tus registros hasta que pidas que se borren.
privacy-no-limit = **Cuánto tiempo:** hasta que pidas que se borre.
